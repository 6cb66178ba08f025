package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;

import org.benchwright.language.ApprovedRevisions;
import org.benchwright.present.ApprovedTexts;
import org.benchwright.present.ApprovedTextsNow;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.jobs.Job;

/**
 * What was approved in the bench's ledger, as it was read last. Whoever asks gets that at once; where the ledger's files have changed
 * since, they are read apart, and who asked is told if that brought other revisions. Most changes are events of tests, and bring none.
 * Any thread may ask.
 */
public final class ApprovedInLedger implements AutoCloseable {

    private final ApprovedTextsNow ledger;
    private final Runnable changed;
    private final Job reading = Job.createSystem(Message.REVISIONS_READ.text(), monitor -> {
        read();
    });
    private volatile ApprovedRevisions known = ApprovedRevisions.none();
    // The job's own.
    private Optional<ApprovedTexts> read = Optional.empty();
    private Optional<CannotStoreException> told = Optional.empty();

    /**
     * @param ledger  the ledger's file; need not exist yet
     * @param changed is told, on the reading thread, that something was signed about a revision
     */
    public ApprovedInLedger(Path ledger, Runnable changed) {
        this.ledger = new ApprovedTextsNow(ledger, Bench.Clocks.system(), ZoneId.systemDefault());
        this.changed = changed;
        reading.setPriority(Job.DECORATE);
    }

    /** What is known now, always the same until something else is. Looks whether there is more to know. */
    public ApprovedRevisions now() {
        reading.schedule();
        return known;
    }

    private void read() {
        try {
            ApprovedTexts texts = ledger.now();
            if (!read.equals(Optional.of(texts))) {
                read = Optional.of(texts);
                known = (procedure, family, number) -> texts.text(procedure, family, number)
                        .map(text -> new ApprovedRevisions.Approved(text, texts.free(procedure, family)));
                changed.run();
            }
        } catch (CannotStoreException unreadable) {
            // The bench says what to do about it; here what was known stays. The same failure, thrown again, is not told again.
            if (told.isEmpty() || told.get() != unreadable) {
                told = Optional.of(unreadable);
                ILog.of(ApprovedInLedger.class).warn(String.valueOf(unreadable.getMessage()), unreadable);
            }
        }
    }

    /** Reads no more. */
    @Override
    public void close() {
        reading.cancel();
    }
}
