package org.benchwright.evidence;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Verdict;

/**
 * Where a value is accepted, undecided or rejected: the bare numbers, all in one unit. Reckoned in decimal numbers, so
 * that a value exactly on a limit is decided exactly.
 *
 * <p>With tolerance limits T<sub>L</sub> and T<sub>U</sub> and guard band w, the acceptance zone is
 * T<sub>L</sub> + w ... T<sub>U</sub> - w and the rejection zone begins beyond T<sub>L</sub> - w and T<sub>U</sub> + w,
 * all ends belonging to the better side (JCGM 106:2012, clause 8; ILAC-G8:09/2019, clause 4).
 *
 * @param lower the lower tolerance limit, or nothing
 * @param upper the upper tolerance limit, or nothing
 * @param guardBand the distance kept from a limit, not negative; 0 for the simple rule
 * @param rule the rule
 */
public record DecisionZones(Optional<BigDecimal> lower, Optional<BigDecimal> upper, BigDecimal guardBand,
        DecisionRule rule) {

    /**
     * Checks the limits and the guard band.
     *
     * @throws IllegalArgumentException when there is no limit, the limits are inverted, the guard band is negative, or
     *         the simple rule is given a guard band
     */
    public DecisionZones {
        Objects.requireNonNull(rule);
        if (lower.isEmpty() && upper.isEmpty()) {
            throw new IllegalArgumentException("A decision needs a lower or an upper limit.");
        }
        if (lower.isPresent() && upper.isPresent() && lower.get().compareTo(upper.get()) > 0) {
            throw new IllegalArgumentException("The limits are inverted: " + lower.get() + " lies above " + upper.get());
        }
        if (guardBand.signum() < 0) {
            throw new IllegalArgumentException("A guard band is not negative: " + guardBand);
        }
        if (!rule.isGuarded() && guardBand.signum() != 0) {
            throw new IllegalArgumentException("The simple rule has no guard band: " + guardBand);
        }
    }

    /**
     * The zones with a guard band of the whole expanded uncertainty, w = U (ILAC-G8:09/2019, 4.2; with U = 2u the risk
     * of wrongly accepting stays below 2.5 %, see {@link MeasurementRisk#worstCase(double)}).
     *
     * @param lower the lower tolerance limit, or nothing
     * @param upper the upper tolerance limit, or nothing
     * @param expandedUncertainty U, not negative
     * @param rule the rule; the simple one does not use U
     * @return the zones
     * @throws IllegalArgumentException as the constructor does, and when U is negative
     */
    public static DecisionZones of(Optional<BigDecimal> lower, Optional<BigDecimal> upper,
            BigDecimal expandedUncertainty, DecisionRule rule) {
        if (expandedUncertainty.signum() < 0) {
            throw new IllegalArgumentException("An uncertainty is not negative: " + expandedUncertainty);
        }
        return new DecisionZones(lower, upper, rule.isGuarded() ? expandedUncertainty : BigDecimal.ZERO, rule);
    }

    /**
     * Decides on one value.
     *
     * @param value the measured value
     * @return accepted, rejected or (with the guard on both sides) undecided
     */
    public Verdict decide(BigDecimal value) {
        BigDecimal margin = margin(value);
        if (margin.compareTo(guardBand) >= 0) {
            return Verdict.ACCEPTED;
        }
        boolean between = rule == DecisionRule.GUARDED_BOTH_WAYS && margin.compareTo(guardBand.negate()) >= 0;
        return between ? Verdict.UNDECIDED : Verdict.REJECTED;
    }

    /**
     * The distance to the nearest tolerance limit.
     *
     * @param value the measured value
     * @return positive inside, zero on a limit, negative outside
     */
    public BigDecimal margin(BigDecimal value) {
        return Stream.concat(lower.map(value::subtract).stream(), upper.map(limit -> limit.subtract(value)).stream())
                .min(BigDecimal::compareTo).orElseThrow();
    }

    /**
     * The smallest value that is accepted, if the acceptance zone is not empty.
     *
     * @return the lower limit plus the guard band, or nothing without a lower limit
     */
    public Optional<BigDecimal> acceptanceLower() {
        return lower.map(limit -> limit.add(guardBand));
    }

    /**
     * The largest value that is accepted, if the acceptance zone is not empty.
     *
     * @return the upper limit minus the guard band, or nothing without an upper limit
     */
    public Optional<BigDecimal> acceptanceUpper() {
        return upper.map(limit -> limit.subtract(guardBand));
    }

    /**
     * Whether the guard bands meet, so that nothing at all can be accepted: the instrument is not good enough for these
     * limits.
     *
     * @return true when no value is accepted
     */
    public boolean nothingAccepted() {
        return acceptanceLower().isPresent() && acceptanceUpper().isPresent()
                && acceptanceLower().get().compareTo(acceptanceUpper().get()) > 0;
    }
}
