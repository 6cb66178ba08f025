package org.benchwright.evidence.internal;

import java.util.Arrays;

/**
 * The way of a sequential soak between its two boundaries. With y, how far the total time is ahead of s for each stop, in
 * mean times: y grows with time and drops by s at each stop. The probability P(y) of being accepted obeys
 * P'(y) = P(y) - P(y - s) with P = 0 at or below the lower boundary and 1 at the upper one; the time E(y) still to go obeys
 * E'(y) = E(y) - E(y - s) - 1 with 0 at both (Dvoretzky, Kiefer and Wolfowitz 1953). Both are followed upwards from the
 * lower boundary in steps that divide s.
 */
public final class SequentialPath {

    private static final int STEPS_PER_DROP = 2000;
    private static final int MOST_STEPS = 4_000_000;
    /** Both solutions grow up to as e to this; their difference keeps some six digits. */
    private static final double LONGEST = 25;

    private final double acceptance;
    private final double expectedTime;

    private SequentialPath(double acceptance, double expectedTime) {
        this.acceptance = acceptance;
        this.expectedTime = expectedTime;
    }

    /**
     * Follows the way.
     *
     * @param drop s, in mean times
     * @param above distance from the beginning to the upper boundary, in mean times
     * @param below distance to the lower boundary, in mean times
     * @param meanTime the mean time itself
     * @return the way
     * @throws IllegalArgumentException when the boundaries lie more than 25 mean times apart, or 2000 times the drop
     */
    public static SequentialPath of(double drop, double above, double below, double meanTime) {
        double length = above + below;
        double step = drop / STEPS_PER_DROP;
        if (length > LONGEST || length / step > MOST_STEPS) {
            throw new IllegalArgumentException("A mean time that short against the test's is not reckoned with.");
        }
        Curve accepted = new Curve(step, 1, 0);
        Curve waiting = new Curve(step, 0, 1);
        int steps = (int) Math.ceil(length / step);
        for (int i = 0; i < steps; i++) {
            accepted.advance();
            waiting.advance();
        }
        double acceptedHere = accepted.at(below) / accepted.at(length);
        double waitingHere = waiting.at(below) - waiting.at(length) * acceptedHere;
        return new SequentialPath(acceptedHere, waitingHere * meanTime);
    }

    /**
     * The probability of being accepted.
     *
     * @return 0 to 1
     */
    public double acceptance() {
        return acceptance;
    }

    /**
     * The mean time until the decision.
     *
     * @return in the unit of the mean time
     */
    public double expectedTime() {
        return expectedTime;
    }

    /** A solution of f'(x) = f(x) - f(x - s) - c, from a first value at the lower boundary on. */
    private static final class Curve {

        private final double step;
        private final double cost;
        private double[] values = new double[STEPS_PER_DROP * 4];
        private int last;

        Curve(double step, double first, double cost) {
            this.step = step;
            this.cost = cost;
            values[0] = first;
        }

        void advance() {
            if (last + 1 == values.length) {
                values = Arrays.copyOf(values, 2 * values.length);
            }
            double growth = Math.exp(step);
            // what a drop leads to, at both ends of the step; before the first whole drop there is nothing
            double from = last < STEPS_PER_DROP ? 0 : values[last - STEPS_PER_DROP];
            double to = last < STEPS_PER_DROP ? 0 : values[last + 1 - STEPS_PER_DROP];
            // integral of exp(step - u) (from + (to - from) u/step + cost) over the step
            double slope = (to - from) / step;
            double constant = Math.expm1(step);
            double linear = constant - step;
            values[last + 1] = growth * values[last] - (from + cost) * constant - slope * linear;
            last++;
        }

        double at(double place) {
            int before = Math.min((int) (place / step), last - 1);
            double part = place / step - before;
            return values[before] * (1 - part) + values[before + 1] * part;
        }
    }
}
