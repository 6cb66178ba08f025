package org.benchwright.evidence;

import org.hipparchus.distribution.continuous.BetaDistribution;

import org.benchwright.evidence.internal.Normal;
import org.benchwright.evidence.internal.Require;

/**
 * So many of so many: first-pass yield, returns, finds.
 *
 * @param hits x, 0 to n
 * @param of n, at least 1
 */
public record Proportion(long hits, long of) {

    private static final double SOLVER_ACCURACY = 1e-15;

    /**
     * An interval for the true proportion.
     *
     * @param lower 0 to 1
     * @param upper 0 to 1, not below the lower end
     */
    public record Interval(double lower, double upper) {
    }

    /**
     * Checks the counts.
     *
     * @throws IllegalArgumentException when a count is out of range
     */
    public Proportion {
        if (of < 1 || hits < 0 || hits > of) {
            throw new IllegalArgumentException("No proportion: " + hits + " of " + of);
        }
    }

    /**
     * The proportion seen.
     *
     * @return x/n
     */
    public double estimate() {
        return (double) hits / of;
    }

    /**
     * The exact interval of Clopper and Pearson (1934): Beta quantiles (&alpha;/2; x, n - x + 1) and
     * (1 - &alpha;/2; x + 1, n - x). Covers the truth at least as often as promised.
     *
     * @param confidence two-sided, between 0 and 1
     * @return the interval; 0 or 1 where all or none hit
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public Interval clopperPearson(double confidence) {
        Require.properFraction("confidence", confidence);
        double oneSided = (1 + confidence) / 2;
        return new Interval(lowerBound(oneSided), upperBound(oneSided));
    }

    /**
     * The exact one-sided lower bound: the Beta quantile (1 - C; x, n - x + 1).
     *
     * @param confidence C, one-sided, between 0 and 1
     * @return the bound; 0 without a hit
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public double lowerBound(double confidence) {
        Require.properFraction("confidence", confidence);
        if (hits == 0) {
            return 0;
        }
        return new BetaDistribution(hits, of - hits + 1.0, SOLVER_ACCURACY).inverseCumulativeProbability(1 - confidence);
    }

    /**
     * The exact one-sided upper bound: the Beta quantile (C; x + 1, n - x).
     *
     * @param confidence C, one-sided, between 0 and 1
     * @return the bound; 1 without a miss
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public double upperBound(double confidence) {
        Require.properFraction("confidence", confidence);
        if (hits == of) {
            return 1;
        }
        return new BetaDistribution(hits + 1.0, of - hits, SOLVER_ACCURACY).inverseCumulativeProbability(confidence);
    }

    /**
     * The score interval of Wilson (1927), without continuity correction: closer to the promised confidence on average
     * than the exact one, but not at least it. With z the two-sided normal quantile and p = x/n:
     * (p + z&sup2;/2n &plusmn; z&radic;(p(1 - p)/n + z&sup2;/4n&sup2;)) / (1 + z&sup2;/n).
     *
     * @param confidence two-sided, between 0 and 1
     * @return the interval
     * @throws IllegalArgumentException when the confidence is out of range
     */
    public Interval wilson(double confidence) {
        Require.properFraction("confidence", confidence);
        double z = Normal.reachOf(confidence);
        double p = estimate();
        double share = z * z / of;
        double middle = p + share / 2;
        double reach = z * Math.sqrt(p * (1 - p) / of + share / (4.0 * of));
        double lower = hits == 0 ? 0 : (middle - reach) / (1 + share);
        double upper = hits == of ? 1 : (middle + reach) / (1 + share);
        return new Interval(lower, upper);
    }
}
