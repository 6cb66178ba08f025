package org.benchwright.evidence;

import java.time.Duration;
import java.util.OptionalDouble;

import org.hipparchus.distribution.continuous.GammaDistribution;

import org.benchwright.evidence.internal.Require;

/**
 * What a soak proves. A fault that stops a unit by itself is taken to strike at a constant rate (the exponential model):
 * with mean time m between stops, T hours show at least one with probability 1 - exp(-T/m). A fault that depends on age,
 * on warmth or on being switched on is not described by it.
 *
 * <p>Times may be in any unit as long as all of one call are in the same; the answers are in that unit.
 */
public final class Soak {

    /** How a soak came to its end. */
    public enum End {
        /** It had lasted as long as planned; bounds use 2r + 2 degrees of freedom. */
        AT_A_TIME,
        /** The last stop ended it; bounds use 2r degrees of freedom. */
        AT_A_STOP
    }

    /**
     * Limits for the mean time between stops.
     *
     * @param lower above zero
     * @param upper nothing when no stop was seen: no mean time is too long then
     */
    public record MeanTime(double lower, OptionalDouble upper) {
    }

    /** So many times the mean interval, with fewer stops than an int can count: nothing is left to one. */
    private static final double CERTAIN = 1e11;
    private static final double SOLVER_ACCURACY = 1e-14;

    private Soak() {
    }

    /**
     * The probability that a soak shows a fault: 1 - exp(-T/m).
     *
     * @param length T, not negative
     * @param meanTime m, above zero
     * @return 0 to 1
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double detectionProbability(double length, double meanTime) {
        Require.notNegative("length of the soak", length);
        Require.positive("mean time between stops", meanTime);
        return -Math.expm1(-length / meanTime);
    }

    /**
     * The longest mean time between stops that a soak without a stop would have revealed: T / -ln(1 - C). 72 h at 90 %
     * give 31.27 h; say 31 h.
     *
     * @param length T, not negative
     * @param confidence C, between 0 and 1
     * @return m such that {@link #detectionProbability} is C
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double longestMeanTimeRevealed(double length, double confidence) {
        Require.notNegative("length of the soak", length);
        return length / demand(confidence);
    }

    /**
     * The same for a {@link Duration}, cut down to the second, so that what is claimed is never more than what is so.
     *
     * @param length T, not negative
     * @param confidence C, between 0 and 1
     * @return the longest mean time between stops that is revealed
     * @throws IllegalArgumentException when a number is out of range
     */
    public static Duration longestMeanTimeRevealed(Duration length, double confidence) {
        return Duration.ofSeconds((long) Math.floor(longestMeanTimeRevealed(seconds(length), confidence)));
    }

    /**
     * How long a soak has to be to reveal a fault: -m ln(1 - C).
     *
     * @param meanTime m, above zero
     * @param confidence C, between 0 and 1
     * @return T
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double lengthFor(double meanTime, double confidence) {
        Require.positive("mean time between stops", meanTime);
        return meanTime * demand(confidence);
    }

    /**
     * The same for a {@link Duration}, rounded up to the second.
     *
     * @param meanTime m, above zero
     * @param confidence C, between 0 and 1
     * @return T
     * @throws IllegalArgumentException when a number is out of range
     */
    public static Duration lengthFor(Duration meanTime, double confidence) {
        return Duration.ofSeconds((long) Math.ceil(lengthFor(seconds(meanTime), confidence)));
    }

    /**
     * Whether a soak supports a claim such as "a fault stopping it every 31 h is revealed at 90 %".
     *
     * @param length T, not negative
     * @param meanTime the claimed m, above zero
     * @param confidence the claimed C, between 0 and 1
     * @return true when the soak shows such a fault at least as probably as claimed
     * @throws IllegalArgumentException when a number is out of range
     */
    public static boolean supports(Duration length, Duration meanTime, double confidence) {
        Require.properFraction("confidence", confidence);
        return detectionProbability(seconds(length), seconds(meanTime)) >= confidence;
    }

    /**
     * The one-sided lower bound on the mean time between stops: 2T / &chi;&sup2;(C; 2r + 2), or 2r instead of 2r + 2
     * degrees of freedom when the last stop ended the soak (NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.1).
     *
     * @param total T, the time of all units together, above zero
     * @param stops r, not negative
     * @param confidence C, between 0 and 1
     * @param end how the soak came to its end
     * @return the bound
     * @throws IllegalArgumentException when a number is out of range, or a stop ended a soak without stops
     */
    public static double lowerBound(double total, int stops, double confidence, End end) {
        Require.positive("total time", total);
        Require.properFraction("confidence", confidence);
        return total / halfChiSquared(confidence, degreesHalved(stops, end));
    }

    /**
     * Two-sided limits for the mean time between stops: 2T / &chi;&sup2;(1 - &alpha;/2; 2r + 2) and
     * 2T / &chi;&sup2;(&alpha;/2; 2r) with &alpha; = 1 - C; both with 2r when the last stop ended the soak (source as for
     * {@link #lowerBound}).
     *
     * @param total T, the time of all units together, above zero
     * @param stops r, not negative
     * @param confidence C, between 0 and 1
     * @param end how the soak came to its end
     * @return the limits; no upper one without stops
     * @throws IllegalArgumentException when a number is out of range, or a stop ended a soak without stops
     */
    public static MeanTime limits(double total, int stops, double confidence, End end) {
        Require.properFraction("confidence", confidence);
        double lower = lowerBound(total, stops, (1 + confidence) / 2, end);
        OptionalDouble upper = stops == 0 ? OptionalDouble.empty()
                : OptionalDouble.of(total / halfChiSquared((1 - confidence) / 2, stops));
        return new MeanTime(lower, upper);
    }

    /**
     * The total time that demonstrates a mean time between stops although r stops are allowed:
     * m &chi;&sup2;(C; 2r + 2) / 2.
     *
     * @param meanTime m, above zero
     * @param allowedStops r, not negative
     * @param confidence C, between 0 and 1
     * @return T
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double totalTimeFor(double meanTime, int allowedStops, double confidence) {
        Require.positive("mean time between stops", meanTime);
        Require.properFraction("confidence", confidence);
        return meanTime * halfChiSquared(confidence, degreesHalved(allowedStops, End.AT_A_TIME));
    }

    /**
     * The confidence with which a mean time between stops is demonstrated: F(2T/m) of &chi;&sup2; with 2r + 2 degrees of
     * freedom; 1 - exp(-T/m) without stops.
     *
     * @param total T, the time of all units together, not negative
     * @param stops r, not negative
     * @param meanTime m, above zero
     * @return 0 to 1
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double demonstratedConfidence(double total, int stops, double meanTime) {
        Require.notNegative("total time", total);
        Require.positive("mean time between stops", meanTime);
        int degreesHalved = degreesHalved(stops, End.AT_A_TIME);
        double means = total / meanTime;
        return means > CERTAIN ? 1 : new GammaDistribution(degreesHalved, 1).cumulativeProbability(means);
    }

    private static double demand(double confidence) {
        Require.properFraction("confidence", confidence);
        return -Math.log1p(-confidence);
    }

    private static int degreesHalved(int stops, End end) {
        Require.count("number of stops", stops);
        if (stops == 0 && end == End.AT_A_STOP) {
            throw new IllegalArgumentException("A soak without stops was not ended by one.");
        }
        return end == End.AT_A_STOP ? stops : Math.addExact(stops, 1);
    }

    /** Half the chi-squared quantile with twice the given degrees of freedom: a gamma quantile of scale 1. */
    private static double halfChiSquared(double probability, int degreesHalved) {
        if (degreesHalved == 1) {
            return -Math.log1p(-probability);
        }
        return new GammaDistribution(degreesHalved, 1, SOLVER_ACCURACY).inverseCumulativeProbability(probability);
    }

    private static double seconds(Duration duration) {
        return duration.getSeconds() + duration.getNano() / 1e9;
    }
}
