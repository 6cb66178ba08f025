package org.benchwright.ui.internal.audit;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.core.Progress;
import org.benchwright.present.Auditing;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.DeviationRow;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.GivingWay;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Reads departures or nonconformities of the whole ledger. */
final class DeviationsJob extends Job {

    private final Path ledger;
    private final StillWindow window;
    private final boolean nonconformities;
    private final boolean waitingOnly;
    private final Consumer<Read> told;

    /**
     * What was read.
     *
     * @param rows    what there is
     * @param trouble why nothing could be read
     */
    record Read(List<DeviationRow> rows, Optional<String> trouble) {
        Read {
            rows = List.copyOf(rows);
        }
    }

    /** @param told is told on the job's thread */
    DeviationsJob(Path ledger, StillWindow window, boolean nonconformities, boolean waitingOnly, Consumer<Read> told) {
        super(Message.DEVIATIONS_JOB.text());
        this.ledger = ledger;
        this.window = window;
        this.nonconformities = nonconformities;
        this.waitingOnly = waitingOnly;
        this.told = told;
        setSystem(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        if (!Files.exists(ledger)) {
            told.accept(new Read(List.of(), Optional.of(Message.RECORDS_NO_LEDGER.text(ledger.toString()))));
            return Status.OK_STATUS;
        }
        try {
            List<DeviationRow> rows = Auditing.here(ledger)
                    .deviations(nonconformities, waitingOnly, Progress.none(), new GivingWay(window, monitor::isCanceled));
            if (!monitor.isCanceled()) {
                told.accept(new Read(rows, Optional.empty()));
            }
        } catch (CannotStoreException | RuntimeException e) {
            if (!monitor.isCanceled()) {
                told.accept(new Read(List.of(), Optional.of(Failures.words(e))));
            }
        }
        return monitor.isCanceled() ? Status.CANCEL_STATUS : Status.OK_STATUS;
    }
}
