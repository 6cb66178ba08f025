package org.benchwright.evidence;

import org.benchwright.evidence.internal.Require;

/**
 * The uncertainty of an interval between two instants, each taken by a hand, given by a tone or sampled by a watch. The
 * ends are independent: u&sup2; = u<sub>start</sub>&sup2; + u<sub>end</sub>&sup2; (JCGM 100:2008, 5.1.2).
 *
 * <p>A hand is late by a mean delay, which is no uncertainty but an error: with a hand at both ends it cancels, at one end
 * it has to be taken off by {@link #correction}. All times in seconds.
 *
 * @param start how the beginning is taken
 * @param end how the end is taken
 */
public record HandTiming(End start, End end) {

    /** How one end of an interval is taken. */
    public sealed interface End {

        /**
         * The standard uncertainty of this end.
         *
         * @return seconds
         */
        double standardUncertainty();

        /**
         * By how much this end is late on average.
         *
         * @return seconds
         */
        double delay();
    }

    /**
     * A key pressed when something is seen.
     *
     * @param delay the mean reaction time, not negative
     * @param spread its standard deviation, not negative
     */
    public record Hand(double delay, double spread) implements End {

        /**
         * Checks both.
         *
         * @throws IllegalArgumentException when one is negative
         */
        public Hand {
            Require.notNegative("reaction time", delay);
            Require.notNegative("spread of the reaction time", spread);
        }

        @Override
        public double standardUncertainty() {
            return spread;
        }
    }

    /**
     * A tone or another instant that the bench itself gives, anywhere within its resolution: u = a/&radic;12 (JCGM
     * 100:2008, F.2.2.1).
     *
     * @param resolution a, not negative
     */
    public record Given(double resolution) implements End {

        /**
         * Checks the resolution.
         *
         * @throws IllegalArgumentException when it is negative
         */
        public Given {
            Require.notNegative("resolution", resolution);
        }

        @Override
        public double standardUncertainty() {
            return resolution / Math.sqrt(12);
        }

        @Override
        public double delay() {
            return 0;
        }
    }

    /**
     * A watch that samples: what it first shows happened since the sample before, on average half a period ago:
     * u = p/&radic;12.
     *
     * @param period p, not negative
     */
    public record Sampled(double period) implements End {

        /**
         * Checks the period.
         *
         * @throws IllegalArgumentException when it is negative
         */
        public Sampled {
            Require.notNegative("sampling period", period);
        }

        @Override
        public double standardUncertainty() {
            return period / Math.sqrt(12);
        }

        @Override
        public double delay() {
            return period / 2;
        }
    }

    /**
     * The uncertainty of the interval.
     *
     * @return u with infinite degrees of freedom, in seconds
     */
    public Uncertainty uncertainty() {
        return Uncertainty.known(Math.hypot(start.standardUncertainty(), end.standardUncertainty()));
    }

    /**
     * What to add to the interval as timed.
     *
     * @return seconds; 0 when both ends are late alike
     */
    public double correction() {
        return start.delay() - end.delay();
    }

    /**
     * The shortest deadline that can be judged with a guard band on both sides: 2U with U = 2u.
     *
     * @return seconds
     */
    public double shortestDeadline() {
        return 4 * uncertainty().standard();
    }
}
