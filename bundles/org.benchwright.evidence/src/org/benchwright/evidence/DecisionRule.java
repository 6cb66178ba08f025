package org.benchwright.evidence;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * How a measured value and its uncertainty become a decision. Agreed on beforehand, in the procedure (ISO/IEC
 * 17025:2017, 7.1.3).
 */
public enum DecisionRule {
    /**
     * Accepted inside the limits or on one, else rejected; the uncertainty is not looked at (ILAC-G8:09/2019, 4.2.1).
     */
    SIMPLE,
    /** Accepted inside the limits drawn in by the guard band, else rejected (ILAC-G8:09/2019, 4.2.2). */
    GUARDED,
    /**
     * Accepted inside the limits drawn in by the guard band, rejected outside the limits let out by it, undecided
     * between (ILAC-G8:09/2019, 4.2.3, with its two conditional answers taken as one: undecided).
     */
    GUARDED_BOTH_WAYS;

    /**
     * The rule as the procedure language writes it.
     *
     * @return {@code guarded both ways}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * Whether the rule keeps a distance from the limits.
     *
     * @return false for simple only
     */
    public boolean isGuarded() {
        return this != SIMPLE;
    }

    /**
     * Finds a rule by its words.
     *
     * @param word as {@link #word()} gives it
     * @return the rule, or nothing
     */
    public static Optional<DecisionRule> find(String word) {
        return Arrays.stream(values()).filter(rule -> rule.word().equals(word)).findFirst();
    }
}
