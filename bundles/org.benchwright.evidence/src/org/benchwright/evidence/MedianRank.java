package org.benchwright.evidence;

import org.hipparchus.distribution.continuous.BetaDistribution;

/** Where the i-th of n failures is plotted: the median of the part of all units that has failed by then. */
public final class MedianRank {

    private static final double SOLVER_ACCURACY = 1e-14;

    private MedianRank() {
    }

    /**
     * Benard's approximation (i - 0.3)/(n + 0.4).
     *
     * @param failure i, 1 to n
     * @param of n, at least 1
     * @return between 0 and 1
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double benard(int failure, int of) {
        check(failure, of);
        return (failure - 0.3) / (of + 0.4);
    }

    /**
     * The exact median: that of the Beta distribution (i, n - i + 1).
     *
     * @param failure i, 1 to n
     * @param of n, at least 1
     * @return between 0 and 1
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double exact(int failure, int of) {
        check(failure, of);
        return new BetaDistribution(failure, of - failure + 1.0, SOLVER_ACCURACY).inverseCumulativeProbability(0.5);
    }

    private static void check(int failure, int of) {
        if (failure < 1 || failure > of) {
            throw new IllegalArgumentException("There is no failure " + failure + " of " + of + ".");
        }
    }
}
