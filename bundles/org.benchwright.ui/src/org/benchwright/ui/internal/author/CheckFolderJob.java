package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentLinkedQueue;

import org.benchwright.language.Remark;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Looks at all files of a folder; remarks that still hold are not made again. */
final class CheckFolderJob extends Job {

    private final AuthorFolder folder;
    private final Queue<Path> closed = new ConcurrentLinkedQueue<>();

    CheckFolderJob(AuthorFolder folder) {
        super(Message.REMARKS_JOB.text());
        this.folder = folder;
        setSystem(true);
        setPriority(DECORATE);
    }

    /** Goes back to what is on the disk, unless the file is open again by then, and looks. */
    void close(Path file) {
        closed.add(file);
        schedule();
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            folder.show(folder.state().begun());
            FolderSession session = folder.session();
            for (Path file = closed.poll(); file != null; file = closed.poll()) {
                if (!folder.isOpen(file)) {
                    session.close(file);
                }
            }
            session.refresh();
            session.compare(folder.approved());
            Map<Path, List<Remark>> remarks = session.remarks(monitor::isCanceled);
            folder.checked(remarks, monitor::isCanceled);
            return Status.OK_STATUS;
        } catch (CancellationException stopped) {
            return Status.CANCEL_STATUS;
        } catch (RuntimeException mistake) {
            ILog.of(CheckFolderJob.class).error(String.valueOf(mistake.getMessage()), mistake);
            folder.show(folder.state().failed(String.valueOf(mistake)));
            return Status.OK_STATUS;
        }
    }
}
