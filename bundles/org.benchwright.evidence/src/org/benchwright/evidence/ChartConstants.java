package org.benchwright.evidence;

import org.hipparchus.special.Gamma;

import org.benchwright.evidence.internal.Integral;
import org.benchwright.evidence.internal.Normal;

/**
 * The constants of control charts for subgroups of n normal readings, reckoned rather than looked up: printed tables
 * differ in their last digit.
 *
 * @param size n, 2 to 100
 * @param d2 the mean range in standard deviations
 * @param d3 the standard deviation of the range in standard deviations
 * @param c4 the mean of the sample's standard deviation in standard deviations
 */
public record ChartConstants(int size, double d2, double d3, double c4) {

    private static final int LARGEST = 100;
    /** Beyond this no reading is to be expected even among a hundred. */
    private static final double REACH = 9;

    /**
     * The constants for a size: d2 = &int;(1 - &Phi;<sup>n</sup> - (1 - &Phi;)<sup>n</sup>), d3 from the second moment of
     * the range (Tippett 1925), c4 = &radic;(2/(n - 1)) &Gamma;(n/2)/&Gamma;((n - 1)/2).
     *
     * @param size n, 2 to 100
     * @return the constants
     * @throws IllegalArgumentException when the size is out of range
     */
    public static ChartConstants of(int size) {
        double d2 = meanRange(size);
        double square = 2 * Integral.of(y -> bothBeyond(y, size), -REACH, REACH, 1);
        double c4 = Math.sqrt(2.0 / (size - 1)) * Math.exp(Gamma.logGamma(size / 2.0) - Gamma.logGamma((size - 1) / 2.0));
        return new ChartConstants(size, d2, Math.sqrt(square - d2 * d2), c4);
    }

    /** d2 alone, which is quickly reckoned; the double integral of d3 is not. */
    static double meanRange(int size) {
        requireSize(size);
        return Integral.of(x -> 1 - Math.pow(Normal.below(x), size) - Math.pow(Normal.above(x), size), -REACH, REACH, 1);
    }

    /** The probability that the smallest reading lies below x and the largest above y, over all x below y. */
    private static double bothBeyond(double y, int size) {
        double belowY = Normal.below(y);
        double noneAbove = Math.pow(belowY, size);
        return Integral.of(x -> {
            double belowX = Normal.below(x);
            return 1 - noneAbove - Math.pow(1 - belowX, size) + Math.pow(belowY - belowX, size);
        }, -REACH, y, 1);
    }

    /**
     * Limits of the mean from the mean range.
     *
     * @return A2 = 3/(d2 &radic;n)
     */
    public double a2() {
        return a2(d2, size);
    }

    /** A2 alone, for which d3 is not needed. */
    static double meanFactor(int size) {
        return a2(meanRange(size), size);
    }

    private static double a2(double meanRange, int size) {
        return 3 / (meanRange * Math.sqrt(size));
    }

    private static void requireSize(int size) {
        if (size < 2 || size > LARGEST) {
            throw new IllegalArgumentException("A subgroup has 2 to " + LARGEST + " readings: " + size);
        }
    }

    /**
     * The lower limit of the range in mean ranges.
     *
     * @return D3 = 1 - 3 d3/d2, not below 0
     */
    public double lowerRangeFactor() {
        return Math.max(0, 1 - 3 * d3 / d2);
    }

    /**
     * The upper limit of the range in mean ranges.
     *
     * @return D4 = 1 + 3 d3/d2
     */
    public double upperRangeFactor() {
        return 1 + 3 * d3 / d2;
    }
}
