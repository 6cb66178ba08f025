package org.benchwright.workshop.internal;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

import org.benchwright.core.Actor;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.StoreException;

/** Writes down which units came back. */
public final class ReturnBook {

    private final Ledger ledger;
    private final KeptTests kept;
    private final Signer key;
    private final ReturnCodec returns = new ReturnCodec();

    /**
     * @param ledger where records are kept
     * @param kept   how they are read
     * @param key    what signs
     */
    public ReturnBook(Ledger ledger, KeptTests kept, Signer key) {
        this.ledger = ledger;
        this.kept = kept;
        this.key = key;
    }

    /**
     * Writes a return into the record of the test by which the unit was handed over.
     *
     * @param by      who received it
     * @param station where, in print
     * @throws RefusedException if the test does not take it, see {@link org.benchwright.engine.InTheField#with}
     */
    public void enter(TestId test, FieldReturn back, Actor by, String station, Instant now)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        try {
            long last = ledger.lastSequence(test);
            if (last == 0) {
                throw new RefusedException(Message.RETURN_NO_TEST.text(test.value()));
            }
            KeptTest before = kept.read(ledger, test);
            if (before.field().isEmpty()) {
                throw new RefusedException(Message.RETURN_OPEN.text(test.value()));
            }
            before.field().get().with(before.run(), back, LocalDate.ofInstant(now, ZoneOffset.UTC));
            EntryDraft draft = new EntryDraft(test, now, before.run().lastMoment().sitting() + 1, Duration.ZERO, by, EventKinds.RETURNED,
                    returns.payload(back));
            ledger.appendSigned(draft, last, new Signing(key, Meaning.RECEIVED_BACK, station));
        } catch (SequenceConflictException conflict) {
            throw new OvertakenException(Message.OVERTAKEN.text(test.value()), conflict);
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }
}
