package org.benchwright.workshop;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

import org.benchwright.engine.receipt.Standing;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.workshop.internal.ReceiptHistory;

/**
 * Remembers what was read of one ledger: where tests stood, and the book of receipts, so that only what went on is read again. May be used
 * from several threads.
 */
public final class StandingMemory {

    private final Map<String, Remembered> tests = new ConcurrentHashMap<>();
    private volatile Optional<ReceiptHistory> receipts = Optional.empty();

    /**
     * Where a test stood.
     *
     * @param sequence number of its last event then
     * @param standing where its unit stood
     * @param since    since when
     */
    record Remembered(long sequence, Standing standing, Instant since) {
    }

    /** The book of receipts as far as it was read from this ledger. */
    ReceiptHistory receipts(Ledger ledger) throws LedgerException {
        ReceiptHistory read = ReceiptHistory.trusted(ledger, receipts);
        receipts = Optional.of(read);
        return read;
    }

    Optional<Remembered> of(String test, long sequence) {
        return Optional.ofNullable(tests.get(test)).filter(known -> known.sequence() == sequence);
    }

    void remember(String test, Remembered what) {
        tests.put(test, what);
    }
}
