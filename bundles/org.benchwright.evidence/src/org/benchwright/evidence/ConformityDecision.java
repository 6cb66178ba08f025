package org.benchwright.evidence;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;

/**
 * A decision on one measured quantity, with everything that it rests on: what a record needs to keep and a verifier
 * needs to decide again.
 *
 * @param outcome accepted, rejected or undecided
 * @param rule the decision rule
 * @param value the measured quantity
 * @param limits the tolerance limits
 * @param expandedUncertainty U, in a unit without an offset
 * @param coverage k, so that the standard uncertainty is u = U / k
 * @param guardBand w, in the unit for differences of the limits: U for the guarded rules, 0 for the simple one
 * @param margin the distance to the nearest tolerance limit, negative outside
 * @param acceptanceZone what is accepted; nothing when the guard bands meet
 */
public record ConformityDecision(Verdict outcome, DecisionRule rule, Quantity value, Limits limits,
        Quantity expandedUncertainty, BigDecimal coverage, Quantity guardBand, Quantity margin,
        Optional<Limits> acceptanceZone) {

    /** Checks that nothing is missing. */
    public ConformityDecision {
        Objects.requireNonNull(outcome);
        Objects.requireNonNull(rule);
        Objects.requireNonNull(value);
        Objects.requireNonNull(limits);
        Objects.requireNonNull(expandedUncertainty);
        Objects.requireNonNull(coverage);
        Objects.requireNonNull(guardBand);
        Objects.requireNonNull(margin);
        Objects.requireNonNull(acceptanceZone);
    }

    /**
     * Decides. Limits, value and uncertainty may be in different units of one dimension; the reckoning is exact.
     *
     * @param value the measured quantity
     * @param limits the tolerance limits
     * @param expandedUncertainty U, not negative, in a unit without an offset (K, not degC)
     * @param coverage k, above zero
     * @param rule the decision rule
     * @return the decision
     * @throws IllegalArgumentException when dimensions differ, limits are inverted, U is negative or in degC, or k is
     *         not above zero
     */
    public static ConformityDecision decide(Quantity value, Limits limits, Quantity expandedUncertainty,
            BigDecimal coverage, DecisionRule rule) {
        if (expandedUncertainty.unit().hasOffset()) {
            throw new IllegalArgumentException("An uncertainty is a difference; give it in "
                    + expandedUncertainty.unit().forDifferences() + ": " + expandedUncertainty);
        }
        if (coverage.signum() <= 0) {
            throw new IllegalArgumentException("A coverage factor is above zero: " + coverage);
        }
        UnitOfMeasure unit = exactUnit(value, limits, expandedUncertainty);
        UnitOfMeasure step = unit.forDifferences();
        DecisionZones zones = DecisionZones.of(limits.lower().map(limit -> limit.exactIn(unit)),
                limits.upper().map(limit -> limit.exactIn(unit)), expandedUncertainty.exactIn(step), rule);
        BigDecimal number = value.exactIn(unit);
        UnitOfMeasure shownStep = limits.unit().forDifferences();
        return new ConformityDecision(zones.decide(number), rule, value, limits, expandedUncertainty, coverage,
                new Quantity(zones.guardBand(), step).to(shownStep),
                new Quantity(zones.margin(number), step).to(shownStep), acceptanceZone(zones, unit, limits.unit()));
    }

    /**
     * The probability that the quantity conforms although, or because, it was measured so: with a normal distribution
     * around the measured value and nothing known beforehand (JCGM 106:2012, clause 7.2).
     *
     * @return 0 to 1; its complement is the specific risk of this decision if accepted
     */
    public double conformanceProbability() {
        UnitOfMeasure unit = limits.unit();
        double standardUncertainty = expandedUncertainty.in(unit.forDifferences()) / coverage.doubleValue();
        return MeasurementRisk.conformanceProbability(value.in(unit), standardUncertainty, limitIn(limits.lower(), unit),
                limitIn(limits.upper(), unit));
    }

    /** The same numbers with another outcome, for combinations of readings that do not decide by the last number. */
    ConformityDecision withOutcome(Verdict other) {
        return new ConformityDecision(other, rule, value, limits, expandedUncertainty, coverage, guardBand, margin,
                acceptanceZone);
    }

    private static OptionalDouble limitIn(Optional<Quantity> limit, UnitOfMeasure unit) {
        return limit.map(quantity -> OptionalDouble.of(quantity.in(unit))).orElseGet(OptionalDouble::empty);
    }

    private static UnitOfMeasure exactUnit(Quantity value, Limits limits, Quantity uncertainty) {
        UnitOfMeasure unit = value.unit();
        for (Quantity limit : limits.lower().stream().toList()) {
            unit = unit.finer(limit.unit());
        }
        for (Quantity limit : limits.upper().stream().toList()) {
            unit = unit.finer(limit.unit());
        }
        return unit.finer(uncertainty.unit());
    }

    private static Optional<Limits> acceptanceZone(DecisionZones zones, UnitOfMeasure unit, UnitOfMeasure shown) {
        if (zones.nothingAccepted()) {
            return Optional.empty();
        }
        return Optional.of(new Limits(zones.acceptanceLower().map(limit -> new Quantity(limit, unit).to(shown)),
                zones.acceptanceUpper().map(limit -> new Quantity(limit, unit).to(shown))));
    }
}
