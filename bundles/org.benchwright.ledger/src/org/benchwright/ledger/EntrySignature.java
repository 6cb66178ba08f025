package org.benchwright.ledger;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.LedgerTables;

/**
 * A signature in a test, as its event tells it; whether it is true is for the {@link LedgerVerifier}.
 *
 * @param test        the test
 * @param sequence    number of the signed event
 * @param kind        kind of the signed event
 * @param meaning     what the signer did
 * @param printedName who, in print
 * @param instant     when
 * @param fingerprint with which key
 */
public record EntrySignature(TestId test, long sequence, String kind, Meaning meaning, String printedName, Instant instant,
        Digest fingerprint) {

    /**
     * The signature that an event carries, if any.
     *
     * @throws PayloadException if its payload can't be read
     */
    public static Optional<EntrySignature> of(LedgerEntry entry) throws PayloadException {
        return LedgerTables.signature(entry);
    }

    public EntrySignature {
        Objects.requireNonNull(test);
        Objects.requireNonNull(meaning);
    }

    /** The signature that {@code entry} carries, if it carries one. */
    public static Optional<EntrySignature> in(LedgerEntry entry) {
        try {
            return LedgerTables.signature(entry);
        } catch (PayloadException impossible) {
            throw new IllegalStateException("an entry holds nothing but JSON", impossible);
        }
    }
}
