package org.benchwright.core;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How a test ends for the unit (JCGM 106, ILAC-G8). Undecided is a verdict of its own and never turns into rejected. */
public enum Verdict {
    /** The unit conforms. */
    ACCEPTED,
    /** The unit does not conform. */
    REJECTED,
    /** It can't be told. */
    UNDECIDED;

    /**
     * The word of the procedure language and of records.
     *
     * @return {@code accepted}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Finds a verdict by its word.
     *
     * @param word as {@link #word()} gives it
     * @return the verdict, or nothing
     */
    public static Optional<Verdict> find(String word) {
        return Arrays.stream(values()).filter(verdict -> verdict.word().equals(word)).findFirst();
    }
}
