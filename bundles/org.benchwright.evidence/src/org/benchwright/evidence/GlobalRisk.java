package org.benchwright.evidence;

import org.benchwright.evidence.internal.Integral;
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

    /** Beyond this many standard deviations a normal process has less than 10<sup>-30</sup> left. */
    private static final double REACH = 12;

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
     * Reckons both risks.
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
        Require.finite("process mean", processMean);
        Require.positive("process deviation", processDeviation);
        Require.positive("measurement deviation", measurementDeviation);
        Scaled scaled = new Scaled(processMean, processDeviation, measurementDeviation, acceptance);
        double from = scaled.ofProcess(tolerance.lower());
        double to = scaled.ofProcess(tolerance.upper());
        double wronglyAccepted = scaled.integrate(-REACH, from, true) + scaled.integrate(to, REACH, true);
        double wronglyRejected = scaled.integrate(from, to, false);
        double rightlyAccepted = scaled.integrate(from, to, true);
        return new GlobalRisk(wronglyAccepted, wronglyRejected, wronglyAccepted + rightlyAccepted);
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
        return halfWidth / Normal.quantile((1 + inTolerance) / 2);
    }

    /** The process in its own standard deviations. */
    private record Scaled(double mean, double deviation, double measurementDeviation, Span acceptance) {

        double ofProcess(double value) {
            return Math.max(-REACH, Math.min(REACH, (value - mean) / deviation));
        }

        double integrate(double from, double to, boolean accepted) {
            if (from >= to) {
                return 0;
            }
            // The acceptance probability turns within a few measurement deviations: the panels must be no coarser.
            double finest = Math.min(1, measurementDeviation / deviation);
            return Integral.of(z -> Normal.density(z) * probability(mean + deviation * z, accepted), from, to, finest);
        }

        private double probability(double trueValue, boolean accepted) {
            double low = (acceptance.lower() - trueValue) / measurementDeviation;
            double high = (acceptance.upper() - trueValue) / measurementDeviation;
            return accepted ? Normal.between(low, high) : Normal.below(low) + Normal.above(high);
        }
    }
}
