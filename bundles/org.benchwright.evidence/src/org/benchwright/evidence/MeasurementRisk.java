package org.benchwright.evidence;

import java.util.OptionalDouble;

import org.benchwright.evidence.internal.Normal;
import org.benchwright.evidence.internal.Require;

/**
 * The risk of a wrong decision on one measured value. All values, limits and uncertainties of one call are in one unit;
 * measurement errors are taken as normally distributed unless said otherwise.
 */
public final class MeasurementRisk {

    private MeasurementRisk() {
    }

    /**
     * The probability that the true value lies within the limits: &Phi;((T<sub>U</sub> - y)/u) -
     * &Phi;((T<sub>L</sub> - y)/u), with nothing known before the measurement (JCGM 106:2012, 7.2 to 7.4).
     *
     * @param measured y
     * @param standardUncertainty u, not negative; with 0 the answer is 0 or 1, a value on a limit conforming
     * @param lower T<sub>L</sub>, or nothing
     * @param upper T<sub>U</sub>, or nothing
     * @return 0 to 1
     * @throws IllegalArgumentException when there is no limit, the limits are inverted or a number is out of range
     */
    public static double conformanceProbability(double measured, double standardUncertainty, OptionalDouble lower,
            OptionalDouble upper) {
        Require.finite("measured value", measured);
        Require.notNegative("standard uncertainty", standardUncertainty);
        double from = lower.orElse(Double.NEGATIVE_INFINITY);
        double to = upper.orElse(Double.POSITIVE_INFINITY);
        Require.limits(lower, upper);
        if (standardUncertainty == 0) {
            return from <= measured && measured <= to ? 1 : 0;
        }
        return Normal.between((from - measured) / standardUncertainty, (to - measured) / standardUncertainty);
    }

    /**
     * The probability that a unit with this measured value does not conform: the specific risk of accepting it
     * (JCGM 106:2012, 9.3.2).
     *
     * @param measured y
     * @param standardUncertainty u, not negative
     * @param lower T<sub>L</sub>, or nothing
     * @param upper T<sub>U</sub>, or nothing
     * @return 0 to 1; small risks keep their digits
     * @throws IllegalArgumentException as {@link #conformanceProbability} does
     */
    public static double specificFalseAccept(double measured, double standardUncertainty, OptionalDouble lower,
            OptionalDouble upper) {
        if (standardUncertainty == 0) {
            return 1 - conformanceProbability(measured, standardUncertainty, lower, upper);
        }
        Require.finite("measured value", measured);
        Require.notNegative("standard uncertainty", standardUncertainty);
        Require.limits(lower, upper);
        double below = lower.isPresent() ? Normal.above((measured - lower.getAsDouble()) / standardUncertainty) : 0;
        double above = upper.isPresent() ? Normal.above((upper.getAsDouble() - measured) / standardUncertainty) : 0;
        return Math.min(1, below + above);
    }

    /**
     * The largest specific risk of accepting with a guard band of r times the expanded uncertainty U = 2u, one limit
     * mattering: 1 - &Phi;(2r) (ILAC-G8:09/2019, Table 1).
     *
     * @param guardBandFactor r = w/U, not negative
     * @return 0.5 without a guard band, 0.0228 for w = U
     * @throws IllegalArgumentException when r is negative or no number
     */
    public static double worstCase(double guardBandFactor) {
        return worstCase(guardBandFactor, 2);
    }

    /**
     * The same for any coverage factor: 1 - &Phi;(k r).
     *
     * @param guardBandFactor r = w/U, not negative
     * @param coverage k = U/u, above zero
     * @return 0 to 0.5
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double worstCase(double guardBandFactor, double coverage) {
        Require.notNegative("guard band factor", guardBandFactor);
        Require.positive("coverage factor", coverage);
        return Normal.above(guardBandFactor * coverage);
    }

    /**
     * The largest specific risk of accepting when the uncertainty itself comes from few readings: 1 - T<sub>&nu;</sub>(w/u)
     * with Student's distribution (JCGM 100:2008, G.3).
     *
     * @param guardBandInStandardUncertainties w/u, not negative
     * @param degreesOfFreedom &nu;, above zero
     * @return 0 to 0.5
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double worstCaseOfFewReadings(double guardBandInStandardUncertainties, double degreesOfFreedom) {
        Require.notNegative("guard band", guardBandInStandardUncertainties);
        Require.positive("degrees of freedom", degreesOfFreedom);
        return Student.above(guardBandInStandardUncertainties, degreesOfFreedom);
    }

    /**
     * The guard band, in standard uncertainties, that keeps the specific risk of accepting at or below a given one when
     * the uncertainty comes from few readings: the 1 - risk quantile of Student's distribution (JCGM 100:2008, G.3).
     *
     * @param risk above 0 and at most 0.5
     * @param degreesOfFreedom &nu;, above zero
     * @return w/u
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double guardBandOfFewReadings(double risk, double degreesOfFreedom) {
        Require.positive("degrees of freedom", degreesOfFreedom);
        if (!(risk > 0 && risk <= 0.5)) {
            throw new IllegalArgumentException("A risk is above 0 and at most 0.5: " + risk);
        }
        return Student.exceededBy(risk, degreesOfFreedom);
    }

    /**
     * The probability that the true value lies within the limits when every true value within &plusmn;a of the measured
     * one is alike (rectangular; JCGM 106:2012, 7.2.1 with the density of JCGM 100:2008, 4.3.7): the part of
     * y - a .. y + a that lies within them.
     *
     * @param measured y
     * @param halfWidth a, not negative; with 0 the answer is 0 or 1, a value on a limit conforming
     * @param lower T<sub>L</sub>, or nothing
     * @param upper T<sub>U</sub>, or nothing
     * @return 0 to 1
     * @throws IllegalArgumentException when there is no limit, the limits are inverted or a number is out of range
     */
    public static double conformanceOfRectangular(double measured, double halfWidth, OptionalDouble lower,
            OptionalDouble upper) {
        Require.finite("measured value", measured);
        Require.notNegative("half-width", halfWidth);
        Require.limits(lower, upper);
        double from = Math.max(lower.orElse(Double.NEGATIVE_INFINITY), measured - halfWidth);
        double to = Math.min(upper.orElse(Double.POSITIVE_INFINITY), measured + halfWidth);
        if (halfWidth == 0) {
            return from <= to ? 1 : 0;
        }
        return Math.max(0, to - from) / (2 * halfWidth);
    }
}
