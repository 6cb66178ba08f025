package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;

import org.benchwright.core.Progress;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.VerificationReport;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.GivingWay;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Verifies a ledger in the background. */
final class CheckJob extends Job {

    private final Path ledger;
    private final StillWindow window;
    private final Watcher watcher;
    // A job that is cancelled before it began is never run, and so could not tell anybody that it was stopped.
    private final AtomicBoolean stopped = new AtomicBoolean();

    /** Is told on the job's thread. */
    interface Watcher {

        /**
         * How far it has come.
         *
         * @param events how many have been looked at
         * @param all    how many there are; 0 if that is not known
         */
        void advanced(long events, long all);

        /** It is over, or was stopped. */
        void checked(VerificationReport report, boolean stopped);

        /** There is no ledger, or it can't be read as one, for this reason. */
        void failed(String words);
    }

    CheckJob(Path ledger, StillWindow window, Watcher watcher) {
        super(Message.CHECK_JOB.text());
        this.ledger = ledger;
        this.window = window;
        this.watcher = watcher;
        setSystem(true);
    }

    /** Has it stop at the next event. */
    void stop() {
        stopped.set(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            VerificationReport report = Bench.verify(ledger, Bench.Clocks.system(), new Steps(), new GivingWay(window, stopped::get));
            watcher.checked(report, stopped.get());
        } catch (CannotStoreException | RuntimeException e) {
            // One that nobody foresaw would leave a check that never ends.
            watcher.failed(Failures.words(e));
        }
        return Status.OK_STATUS;
    }

    /** Counts events. */
    private final class Steps implements Progress {

        private long done;
        private long all;

        @Override
        public void begin(String what, long total) {
            all = total;
            watcher.advanced(0, all);
        }

        @Override
        public void advance(long steps) {
            done += steps;
            watcher.advanced(done, all);
        }

        @Override
        public void end() {
            // The report tells.
        }
    }
}
