package org.benchwright.ledger;

import java.time.Instant;
import java.util.Objects;
import org.benchwright.core.Digest;

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

    public EntrySignature {
        Objects.requireNonNull(test);
        Objects.requireNonNull(meaning);
    }
}
