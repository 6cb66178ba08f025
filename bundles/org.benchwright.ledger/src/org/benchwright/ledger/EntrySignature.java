package org.benchwright.ledger;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.SignaturePart;

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
 * @param register    number of the last event of the register of people that the signing bench knew; empty in the books, and where there was
 *                    no register yet
 */
public record EntrySignature(TestId test, long sequence, String kind, Meaning meaning, String printedName, Instant instant,
        Digest fingerprint, OptionalLong register) {

    private static final String MEMBER = "\"" + SignaturePart.NAME + "\":";

    public EntrySignature {
        Objects.requireNonNull(test);
        Objects.requireNonNull(meaning);
    }

    /** Whether it says in print that it is by them; role and id, as whoever signs for themselves has it printed. */
    public boolean prints(Actor by) {
        return printedName.equals(by.toString());
    }

    /** The signature that {@code entry} carries; empty when it carries none, or something that can't be read as one. */
    public static Optional<EntrySignature> in(LedgerEntry entry) {
        return part(entry).flatMap(part -> Meaning.find(part.meaning()).flatMap(meaning -> Digest.find(part.fingerprint())
                .map(fingerprint -> new EntrySignature(entry.test(), entry.sequence(), entry.kind(), meaning, part.printedName(),
                        entry.instant(), fingerprint, part.registerKnown()))));
    }

    private static Optional<SignaturePart> part(LedgerEntry entry) {
        if (!entry.payload().contains(MEMBER)) {
            // A canonical payload has one way only to write the name of a member.
            return Optional.empty();
        }
        try {
            return SignaturePart.in(CanonicalJson.parse(entry.payload()));
        } catch (PayloadException impossible) {
            throw new IllegalStateException("an entry holds nothing but JSON", impossible);
        }
    }
}
