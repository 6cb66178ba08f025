package org.benchwright.ledger;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Something that verification found.
 *
 * @param test     the test it concerns, where it concerns one
 * @param sequence the event in that test, where it concerns one
 * @param kind     what is wrong
 * @param words    the same in plain words, with places
 */
public record Fault(Optional<TestId> test, OptionalLong sequence, FaultKind kind, String words) {

    public Fault {
        Objects.requireNonNull(test);
        Objects.requireNonNull(sequence);
        Objects.requireNonNull(kind);
        Objects.requireNonNull(words);
    }

    /** A fault of one event. */
    public static Fault of(TestId test, long sequence, FaultKind kind, String words) {
        return new Fault(Optional.of(test), OptionalLong.of(sequence), kind, words);
    }

    /** A fault of the ledger as a whole. */
    public static Fault ofLedger(FaultKind kind, String words) {
        return new Fault(Optional.empty(), OptionalLong.empty(), kind, words);
    }
}
