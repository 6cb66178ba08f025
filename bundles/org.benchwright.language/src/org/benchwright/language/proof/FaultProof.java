package org.benchwright.language.proof;

import java.util.List;
import java.util.Objects;

/**
 * What of a procedure reveals a fault of the family.
 *
 * @param code    the fault's code
 * @param title   the fault in a few words
 * @param reveals the places that do, in the order of the text; empty where none does
 */
public record FaultProof(String code, String title, List<Reveal> reveals) {

    /** Why a place reveals a fault. */
    public enum How {
        /** The step says so: {@code reveals}. */
        DECLARED,
        /** What the fault {@code shows} differs from what is expected there. */
        SHOWN
    }

    /**
     * A place that reveals it.
     *
     * @param place    the name of the step or soak
     * @param how      why
     * @param words    what is expected there instead, for {@link How#SHOWN}; else empty
     * @param onDemand whether a test comes there only when something else was wrong
     */
    public record Reveal(String place, How how, String words, boolean onDemand) {
        public Reveal {
            Objects.requireNonNull(how);
        }
    }

    public FaultProof {
        reveals = List.copyOf(reveals);
    }
}
