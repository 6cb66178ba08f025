package org.benchwright.evidence;

import org.benchwright.evidence.internal.Normal;
import org.benchwright.evidence.internal.Require;

/**
 * The risks of a measurement over all units that come in, before any of them is measured (JCGM 106:2012, 9.5): true
 * values &eta; come from a normal process N(m, s<sub>p</sub>), measured values from N(&eta;, s<sub>t</sub>).
 *
 * <p>False accept: the integral over &eta; outside the tolerance of p(&eta;) times the probability of measuring inside
 * the acceptance limits; false reject: the integral over &eta; inside of p(&eta;) times the probability of measuring
 * outside. Integrated numerically; both are good to about 10<sup>-10</sup>.
 *
 * @param falseAccept the probability that a unit does not conform and is accepted
 * @param falseReject the probability that a unit conforms and is rejected
 * @param accepted the probability that a unit is accepted
 */
public record GlobalRisk(double falseAccept, double falseReject, double accepted) {

    /**
     * A span of values, one side of which may be infinite.
     *
     * @param lower the lower end
     * @param upper the upper end, not below the lower one
     */
    public record Span(double lower, double upper) {

        /**
         * Checks the order.
         *
         * @throws IllegalArgumentException when the ends are inverted, no numbers, or both infinite
         */
        public Span {
            if (!(lower <= upper) || Double.isInfinite(lower) && Double.isInfinite(upper)) {
                throw new IllegalArgumentException("A span needs two ends in order, one of them finite: " + lower
                        + " .. " + upper);
            }
        }
    }

    /**
     * How values scatter.
     *
     * @param mean their middle
     * @param deviation their standard deviation, above zero
     * @param shape of the scatter
     */
    public record Spread(double mean, double deviation, Shape shape) {

        /**
         * Checks the numbers.
         *
         * @throws IllegalArgumentException when the mean is not finite or the deviation is not above zero
         */
        public Spread {
            Require.finite("mean", mean);
            Require.positive("deviation", deviation);
        }
    }

    /** How values scatter around their middle. */
    public enum Shape {
        /** Normal. */
        NORMAL,
        /** All values within &radic;3 standard deviations alike, none beyond. */
        RECTANGULAR
    }

    /**
     * Reckons both risks for normal units and normal errors.
     *
     * @param processMean m
     * @param processDeviation s<sub>p</sub>, above zero
     * @param measurementDeviation s<sub>t</sub>, the standard uncertainty, above zero
     * @param tolerance the tolerance limits
     * @param acceptance the acceptance limits
     * @return the risks
     * @throws IllegalArgumentException when a number is out of range
     */
    public static GlobalRisk of(double processMean, double processDeviation, double measurementDeviation,
            Span tolerance, Span acceptance) {
        return of(new Spread(processMean, processDeviation, Shape.NORMAL),
                new Spread(0, measurementDeviation, Shape.NORMAL), tolerance, acceptance);
    }

    /**
     * Reckons both risks for units and errors of any shape.
     *
     * @param units how true values scatter
     * @param errors how measured values scatter around the true one; their mean is what the instrument reads too high
     * @param tolerance the tolerance limits
     * @param acceptance the acceptance limits
     * @return the risks
     */
    public static GlobalRisk of(Spread units, Spread errors, Span tolerance, Span acceptance) {
        GlobalIntegral integral = new GlobalIntegral(units, errors, acceptance);
        double from = tolerance.lower();
        double to = tolerance.upper();
        double wronglyAccepted = integral.accepted(Double.NEGATIVE_INFINITY, from)
                + integral.accepted(to, Double.POSITIVE_INFINITY);
        return new GlobalRisk(wronglyAccepted, integral.rejected(from, to), wronglyAccepted + integral.accepted(from, to));
    }

    /**
     * Reckons both risks for normal units and a measurement that may be repeated. The error that all readings share is
     * added to the true value: t + c is normal, and t given t + c too, which leaves one integral over t + c of the chance
     * to be accepted (or rejected) given it, times its density, times the chance that t lies outside (or inside) the limits.
     *
     * @param processMean m
     * @param processDeviation s<sub>p</sub>, above zero
     * @param measurement the arrangement; the share that its readings have in common lies above 0 and below 1
     * @param undecidedRejects whether what is not accepted counts as rejected, as a rule with two outcomes has it
     * @return the risks
     * @throws IllegalArgumentException when a number is out of range
     */
    public static GlobalRisk of(double processMean, double processDeviation, RepeatRisk measurement, boolean undecidedRejects) {
        Spread units = new Spread(processMean, processDeviation, Shape.NORMAL);
        return new RepeatIntegral(units, measurement, undecidedRejects).risk();
    }

    /**
     * The probability that an accepted unit does not conform.
     *
     * @return the false-accept risk among the accepted, 0 when none is
     */
    public double falseAcceptAmongAccepted() {
        return accepted == 0 ? 0 : falseAccept / accepted;
    }

    /**
     * The standard deviation of a process around the middle of its tolerance that yields a given part in tolerance.
     *
     * @param halfWidth half the tolerance's width, above zero
     * @param inTolerance the part of all units that conforms, between 0 and 1
     * @return the process's standard deviation, in the unit of the half-width
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double processDeviation(double halfWidth, double inTolerance) {
        Require.positive("half-width", halfWidth);
        Require.properFraction("part in tolerance", inTolerance);
        return halfWidth / Normal.reachOf(inTolerance);
    }
}
