package org.benchwright.engine;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.engine.internal.Words;

/**
 * A unit that had been handed over and came back.
 *
 * @param on        the day on which it came back
 * @param complaint what its owner says, not blank
 * @param fault     whether the complaint was found to be so
 */
public record FieldReturn(LocalDate on, String complaint, Fault fault) {

    /** Whether a fault was found in a unit that came back. */
    public enum Fault {
        CONFIRMED("confirmed"), NOT_FOUND("not found"), NOT_LOOKED_FOR("not looked for yet");

        private final String word;

        Fault(String word) {
            this.word = word;
        }

        /** The word that is recorded and shown. */
        public String word() {
            return word;
        }

        /** The one with that word. */
        public static Optional<Fault> find(String word) {
            return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
        }
    }

    public FieldReturn {
        Objects.requireNonNull(on);
        Objects.requireNonNull(complaint);
        Objects.requireNonNull(fault);
    }

    /** This return as words of a record. */
    public String words() {
        return Words.of("return.words", on, complaint, fault.word());
    }
}
