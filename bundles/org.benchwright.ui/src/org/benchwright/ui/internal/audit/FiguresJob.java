package org.benchwright.ui.internal.audit;

import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.core.Progress;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.GivingWay;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Reads the figures of a ledger. Of a reading that was given up nothing is told: of what it was to find there is only a part. */
public final class FiguresJob extends Job {

    private final Path ledger;
    private final StillWindow window;
    private final FigureFilter filter;
    private final Watcher watcher;

    /** Is told on the job's thread. */
    public interface Watcher {

        /** So many tests were derived. */
        void derived(long tests);

        /** The figures. */
        void read(Figures figures);

        /** There are none, for this reason. */
        void failed(String words);
    }

    /**
     * @param window whoever does something there goes first
     * @param filter of which tests
     */
    public FiguresJob(Path ledger, StillWindow window, FigureFilter filter, Watcher watcher) {
        super(Message.FIGURES_JOB.text());
        this.ledger = ledger;
        this.window = window;
        this.filter = filter;
        this.watcher = watcher;
        setSystem(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        if (!Files.exists(ledger)) {
            watcher.failed(Message.RECORDS_NO_LEDGER.text(ledger.toString()));
            return Status.OK_STATUS;
        }
        try {
            Figures read = Figures.read(ledger, filter, new Steps(), new GivingWay(window, monitor::isCanceled));
            if (!monitor.isCanceled()) {
                watcher.read(read);
            }
        } catch (CannotStoreException | RuntimeException e) {
            if (!monitor.isCanceled()) {
                watcher.failed(Failures.words(e));
            }
        }
        return Status.OK_STATUS;
    }

    /** Counts tests. */
    private final class Steps implements Progress {

        private long done;

        @Override
        public void begin(String what, long total) {
            watcher.derived(0);
        }

        @Override
        public void advance(long steps) {
            done += steps;
            watcher.derived(done);
        }

        @Override
        public void end() {
            // The figures tell.
        }
    }
}
