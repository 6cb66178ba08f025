package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;

import org.benchwright.core.Severity;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.Analysis;
import org.benchwright.language.editing.Compiled;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Makes out what can be shown of a file's procedures, apart from the display's thread. */
final class PrintedJob extends Job {

    private final AuthorFolder folder;
    private final Path file;
    private final Consumer<PrintedNow> shown;
    private PrintedNow now = PrintedNow.NOTHING;

    PrintedJob(AuthorFolder folder, Path file, Consumer<PrintedNow> shown) {
        super(Message.PRINTED_JOB.text());
        this.folder = folder;
        this.file = file;
        this.shown = shown;
        setSystem(true);
        setPriority(DECORATE);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            List<Compiled> compiled = folder.session().compiled(file, monitor::isCanceled);
            List<Remark> errors = errors();
            now = compiled.isEmpty() && !errors.isEmpty() ? now.unreadable(errors) : now.next(compiled);
            shown.accept(now);
            return Status.OK_STATUS;
        } catch (CancellationException stopped) {
            return Status.CANCEL_STATUS;
        } catch (RuntimeException mistake) {
            ILog.of(PrintedJob.class).error(String.valueOf(mistake.getMessage()), mistake);
            return Status.OK_STATUS;
        }
    }

    private List<Remark> errors() {
        return folder.latest(file).map(Analysis::remarks).orElse(List.of()).stream().filter(remark -> remark.severity() == Severity.ERROR).toList();
    }
}
