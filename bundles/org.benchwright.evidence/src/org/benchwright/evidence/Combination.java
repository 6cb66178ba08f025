package org.benchwright.evidence;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;

/**
 * How the readings of a repeated measurement become one decision. What repeating does to the risk of wrongly accepting
 * is reckoned by {@link RepeatRisk}.
 */
public enum Combination {
    /**
     * The mean of all readings is decided on by the rule. The uncertainty stays that of one reading: an instrument's
     * own error does not shrink by reading it again.
     */
    MEAN,
    /**
     * Accepted when every reading lies inside the tolerance limits, rejected when none does, else undecided; the guard
     * band has had its say in asking for another reading.
     */
    BOTH_INSIDE,
    /** The last reading alone is decided on by the rule, as if there had been no other. */
    LAST;

    /**
     * The combination as the procedure language writes it.
     *
     * @return {@code both inside}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /**
     * Finds a combination by its words.
     *
     * @param word as {@link #word()} gives it
     * @return the combination, or nothing
     */
    public static Optional<Combination> find(String word) {
        return Arrays.stream(values()).filter(combination -> combination.word().equals(word)).findFirst();
    }

    /**
     * Decides on all readings so far. A single reading is decided on by the rule, whatever the combination.
     *
     * @param readings the readings in their order, at least one, of one dimension
     * @param limits the tolerance limits
     * @param expandedUncertainty U of one reading, in a unit without an offset
     * @param coverage k, above zero
     * @param rule the decision rule
     * @return the decision; its value is the mean, or the last reading
     * @throws IllegalArgumentException when there is no reading, or as {@link ConformityDecision#decide} does
     */
    public ConformityDecision decide(List<Quantity> readings, Limits limits, Quantity expandedUncertainty,
            BigDecimal coverage, DecisionRule rule) {
        if (readings.isEmpty()) {
            throw new IllegalArgumentException("There is no reading to decide on.");
        }
        Quantity last = readings.get(readings.size() - 1);
        Quantity decisive = this == MEAN ? mean(readings) : last;
        ConformityDecision decision = ConformityDecision.decide(decisive, limits, expandedUncertainty, coverage, rule);
        return this == BOTH_INSIDE && readings.size() > 1
                ? decision.withOutcome(allInside(readings, limits, decision)) : decision;
    }

    private static Verdict allInside(List<Quantity> readings, Limits limits, ConformityDecision decision) {
        long inside = readings.stream().filter(limits::contains).count();
        if (inside == 0) {
            return Verdict.REJECTED;
        }
        boolean accepted = inside == readings.size() && decision.acceptanceZone().isPresent();
        return accepted ? Verdict.ACCEPTED : Verdict.UNDECIDED;
    }

    private static Quantity mean(List<Quantity> readings) {
        if (readings.size() == 1) {
            return readings.get(0);
        }
        UnitOfMeasure unit = readings.stream().map(Quantity::unit).reduce(UnitOfMeasure::finer).orElseThrow();
        BigDecimal sum = readings.stream().map(reading -> reading.exactIn(unit)).reduce(BigDecimal.ZERO, BigDecimal::add);
        // 34 digits are far finer than any reading; a mean that ends as a decimal number is exact.
        return new Quantity(sum.divide(BigDecimal.valueOf(readings.size()), MathContext.DECIMAL128), unit);
    }
}
