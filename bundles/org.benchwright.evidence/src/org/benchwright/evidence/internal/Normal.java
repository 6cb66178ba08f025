package org.benchwright.evidence.internal;

import org.hipparchus.distribution.continuous.NormalDistribution;

/** The standard normal distribution, taken on the side where small probabilities keep their digits. */
public final class Normal {

    /** Beyond this many standard deviations a normal error has less than 10<sup>-15</sup> left. */
    public static final double REACH = 8;

    private static final NormalDistribution STANDARD = new NormalDistribution();

    private Normal() {
    }

    /**
     * The density.
     *
     * @param z in standard deviations from the mean
     * @return &phi;(z)
     */
    public static double density(double z) {
        return STANDARD.density(z);
    }

    /**
     * The probability of a smaller value.
     *
     * @param z in standard deviations from the mean; may be infinite
     * @return &Phi;(z)
     */
    public static double below(double z) {
        if (Double.isInfinite(z)) {
            return z > 0 ? 1 : 0;
        }
        return STANDARD.cumulativeProbability(z);
    }

    /**
     * The probability of a larger value.
     *
     * @param z in standard deviations from the mean; may be infinite
     * @return &Phi;(-z), which keeps its digits where 1 - &Phi;(z) would not
     */
    public static double above(double z) {
        return below(-z);
    }

    /**
     * The probability of a value between two others.
     *
     * @param from in standard deviations from the mean; may be infinite
     * @param to   not below the first; may be infinite
     * @return &Phi;(to) - &Phi;(from)
     */
    public static double between(double from, double to) {
        return from > 0 ? above(from) - above(to) : below(to) - below(from);
    }

    /**
     * The value below which a part of all lies.
     *
     * @param probability that part, 0 to 1
     * @return in standard deviations from the mean
     */
    public static double quantile(double probability) {
        return STANDARD.inverseCumulativeProbability(probability);
    }

    /**
     * How far to both sides of the mean a part of all lies: the quantile at (1 + C)/2, taken in the lower tail, where confidences next to 1
     * stay apart.
     *
     * @param confidence C, that part, between 0 and 1
     * @return in standard deviations, not negative
     */
    public static double reachOf(double confidence) {
        return -quantile((1 - confidence) / 2);
    }
}
