package org.benchwright.evidence;

import org.hipparchus.distribution.continuous.BetaDistribution;

import org.benchwright.evidence.internal.Require;

/**
 * What n trials with few or no failures prove about reliability R, the probability of success of one trial. Two
 * conventions are in use and must not be mixed: 29 clean trials at 95 % prove R = 0.90186 by one and 0.90497 by the
 * other. A record names the one it used.
 */
public enum SuccessRun {
    /** The classic theorem: R<sup>n</sup> = 1 - C; nothing is assumed about R beforehand. */
    CLASSIC(0),
    /** The form with n + 1: R<sup>n + 1</sup> = 1 - C; every R is taken as equally likely beforehand. */
    UNIFORM_PRIOR(1);

    private static final double SOLVER_ACCURACY = 1e-14;
    /** 0.9 squared is 1 - 0.19, but not in binary fractions: what proves it but for that does prove it. */
    private static final double ROUNDING = 1e-12;
    private static final int MOST_TRIALS = 1 << 30;
    private final int addedTrials;

    SuccessRun(int addedTrials) {
        this.addedTrials = addedTrials;
    }

    /**
     * The reliability that clean trials prove: (1 - C)<sup>1/n</sup>, or 1/(n + 1).
     *
     * @param trials n, not negative, all of them successes
     * @param confidence C, between 0 and 1
     * @return R; 0 after no trials by the classic form
     * @throws IllegalArgumentException when a number is out of range
     */
    public double reliability(int trials, double confidence) {
        Require.count("number of trials", trials);
        Require.properFraction("confidence", confidence);
        double exponent = (double) trials + addedTrials;
        return exponent == 0 ? 0 : Math.exp(Math.log1p(-confidence) / exponent);
    }

    /**
     * The fewest clean trials that prove a reliability: ceil(ln(1 - C)/ln R), or one fewer.
     *
     * @param reliability R, between 0 and 1
     * @param confidence C, between 0 and 1
     * @return n
     * @throws IllegalArgumentException when a number is out of range, or more than 2<sup>30</sup> trials were needed
     */
    public int trials(double reliability, double confidence) {
        return trials(reliability, confidence, 0);
    }

    /**
     * The fewest trials that prove a reliability although some may fail: the smallest n for which the probability of at
     * most c failures is 1 - C or less (cumulative binomial; with the uniform prior n + 1 in the place of n).
     *
     * @param reliability R, between 0 and 1
     * @param confidence C, between 0 and 1
     * @param allowedFailures c, not negative
     * @return n
     * @throws IllegalArgumentException when a number is out of range, or more than 2<sup>30</sup> trials were needed
     */
    public int trials(double reliability, double confidence, int allowedFailures) {
        Require.properFraction("reliability", reliability);
        Require.properFraction("confidence", confidence);
        Require.count("number of allowed failures", allowedFailures);
        int enough = Math.max(1, allowedFailures);
        while (!proves(enough, allowedFailures, reliability, confidence)) {
            if (enough >= MOST_TRIALS / 2) {
                throw new IllegalArgumentException("More trials than anybody can run: R " + reliability + ", C "
                        + confidence);
            }
            enough *= 2;
        }
        int tooFew = allowedFailures - 1;
        while (enough - tooFew > 1) {
            int middle = tooFew + (enough - tooFew) / 2;
            if (proves(middle, allowedFailures, reliability, confidence)) {
                enough = middle;
            } else {
                tooFew = middle;
            }
        }
        return enough;
    }

    private boolean proves(int trials, int failures, double reliability, double confidence) {
        int counted = trials + addedTrials;
        if (counted <= failures) {
            return false;
        }
        if (failures == 0) {
            return counted * Math.log(reliability) <= Math.log1p(-confidence) * (1 - ROUNDING);
        }
        // P(at most c failures in n) = P(Beta(n - c, c + 1) <= R)
        return new BetaDistribution((double) counted - failures, failures + 1.0, SOLVER_ACCURACY)
                .cumulativeProbability(reliability) <= (1 - confidence) * (1 + ROUNDING);
    }
}
