package org.benchwright.ui.internal.audit;

import java.nio.file.Path;

import org.benchwright.core.Progress;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.VerificationReport;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Verifies a ledger in the background. */
final class CheckJob extends Job {

    private final Path ledger;
    private final Watcher watcher;

    /** Is told on the job's thread. */
    interface Watcher {

        /** How many events have been looked at. */
        void advanced(long events);

        /** It is over, or was stopped. */
        void checked(VerificationReport report, boolean stopped);

        /** There is no ledger, or it can't be read as one. */
        void failed(CannotStoreException failure);
    }

    CheckJob(Path ledger, Watcher watcher) {
        super(Message.CHECK_JOB.text());
        this.ledger = ledger;
        this.watcher = watcher;
        setSystem(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            VerificationReport report = Bench.verify(ledger, Bench.Clocks.system(), new Steps(), monitor::isCanceled);
            watcher.checked(report, monitor.isCanceled());
        } catch (CannotStoreException e) {
            watcher.failed(e);
        }
        return Status.OK_STATUS;
    }

    /** Counts events. */
    private final class Steps implements Progress {

        private long done;

        @Override
        public void begin(String what, long total) {
            watcher.advanced(0);
        }

        @Override
        public void advance(long steps) {
            done += steps;
            watcher.advanced(done);
        }

        @Override
        public void end() {
            // The report tells.
        }
    }
}
