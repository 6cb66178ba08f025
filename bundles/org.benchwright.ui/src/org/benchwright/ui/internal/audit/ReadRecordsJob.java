package org.benchwright.ui.internal.audit;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.core.Cancellation;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSearch;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.GivingWay;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Reads the rows of all records, the latest first; tells how far it has come. */
final class ReadRecordsJob extends Job {

    /** Whoever looks has something soon; and however many rows there are, telling of them takes little of the time. */
    private static final int FIRST_TOLD = 50;
    private static final long TOLD_EVERY_NANOS = 500_000_000;

    private final Path ledger;
    private final StillWindow window;
    private final Consumer<Progress> told;

    /**
     * How far the reading has come.
     *
     * @param rows    rows read so far, to be searched
     * @param all     how many there are
     * @param over    true if no more will come
     * @param trouble why a record, or all, could not be read
     */
    record Progress(RecordSearch rows, int all, boolean over, Optional<String> trouble) {
    }

    /** @param told is told on the job's thread */
    ReadRecordsJob(Path ledger, StillWindow window, Consumer<Progress> told) {
        super(Message.RECORDS_READ.text());
        this.ledger = ledger;
        this.window = window;
        this.told = told;
        setSystem(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        if (!Files.exists(ledger)) {
            told.accept(new Progress(RecordSearch.none(), 0, true, Optional.of(Message.RECORDS_NO_LEDGER.text(ledger.toString()))));
            return Status.OK_STATUS;
        }
        try (Bench bench = Bench.read(ledger, Bench.Clocks.system())) {
            return read(bench, monitor);
        } catch (CannotStoreException | RuntimeException e) {
            told.accept(new Progress(RecordSearch.none(), 0, true, Optional.of(Failures.words(e))));
            return Status.OK_STATUS;
        }
    }

    private IStatus read(Bench bench, IProgressMonitor monitor) throws CannotStoreException {
        List<String> tests = bench.records();
        RecordSearch rows = RecordSearch.none();
        List<RecordRow> fresh = new ArrayList<>();
        Optional<String> trouble = Optional.empty();
        Cancellation cancellation = new GivingWay(window, monitor::isCanceled);
        long toldAt = System.nanoTime();
        for (int i = tests.size() - 1; i >= 0; i--) {
            if (cancellation.requested()) {
                return Status.CANCEL_STATUS;
            }
            try {
                bench.row(tests.get(i)).ifPresent(fresh::add);
            } catch (CannotStoreException e) {
                // One bad record must not hide the others; the ledger check tells all about it.
                trouble = Optional.of(e.getMessage());
            }
            if (rows.size() == 0 && fresh.size() == FIRST_TOLD || System.nanoTime() - toldAt > TOLD_EVERY_NANOS) {
                rows = rows.and(fresh);
                fresh.clear();
                told.accept(new Progress(rows, tests.size(), false, trouble));
                toldAt = System.nanoTime();
            }
        }
        if (monitor.isCanceled()) {
            return Status.CANCEL_STATUS;
        }
        told.accept(new Progress(rows.and(fresh), tests.size(), true, trouble));
        return Status.OK_STATUS;
    }
}
