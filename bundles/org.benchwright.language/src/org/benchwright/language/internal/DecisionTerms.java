package org.benchwright.language.internal;

import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.model.Decision;
import org.benchwright.model.MeasureAgain;

/** Decision rules and combinations of readings as they are written, in the terms of the mathematics. */
public final class DecisionTerms {

    private DecisionTerms() {
    }

    /** The rule of a decision. */
    public static DecisionRule rule(Decision decision) {
        return switch (decision.getRule()) {
            case SIMPLE -> DecisionRule.SIMPLE;
            case GUARDED -> DecisionRule.GUARDED;
            case GUARDED_BOTH_WAYS -> DecisionRule.GUARDED_BOTH_WAYS;
        };
    }

    /** How readings are combined. */
    public static Combination combination(MeasureAgain again) {
        return switch (again.getCombination()) {
            case MEAN -> Combination.MEAN;
            case BOTH_INSIDE -> Combination.BOTH_INSIDE;
            case LAST -> Combination.LAST;
        };
    }
}
