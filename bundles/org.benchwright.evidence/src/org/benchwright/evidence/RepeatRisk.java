package org.benchwright.evidence;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.evidence.internal.Integral;
import org.benchwright.evidence.internal.Normal;
import org.benchwright.evidence.internal.Require;
import org.benchwright.evidence.internal.SequentialMean;

/**
 * The probability of accepting when an undecided measurement may be repeated, every reading guarded both ways. Trying
 * again gives an unfit unit another chance; this says how large that chance is.
 *
 * <p>Reading i is t + c + e<sub>i</sub> with true value t, an error c common to all readings (the instrument's own) and
 * errors e<sub>i</sub> that are new each time, all normal; the variance of c is a stated share of u&sup2;. Own
 * derivation: the first reading decides by its zones; after each undecided one another is taken and all of them are
 * combined, at most n in all. With n = 1 the risk at a limit is 1 - &Phi;(w/u), as {@link MeasurementRisk#worstCase}.
 *
 * <p>Values, limits and uncertainty are in one unit.
 *
 * @param lower the lower tolerance limit, or nothing
 * @param upper the upper tolerance limit, or nothing
 * @param guardBand w, not negative
 * @param standardUncertainty u of one reading, above zero
 * @param commonShare the share of u&sup2; that all readings have in common, 0 (nothing) to 1 (everything)
 * @param mostReadings n, 1 to 20, the first one included
 * @param combination how the readings are combined
 */
public record RepeatRisk(OptionalDouble lower, OptionalDouble upper, double guardBand, double standardUncertainty,
        double commonShare, int mostReadings, Combination combination) {

    private static final int MOST_READINGS = 20;
    /** The share of an instrument's variance that all its readings are taken to have in common, where nothing is known. */
    public static final double ASSUMED_COMMON_SHARE = 0.5;
    /**
     * Checks everything.
     *
     * @throws IllegalArgumentException when a number is out of range
     */
    public RepeatRisk {
        Require.limits(lower, upper);
        Require.notNegative("guard band", guardBand);
        Require.positive("standard uncertainty", standardUncertainty);
        Objects.requireNonNull(combination);
        Require.part("common share", commonShare);
        if (mostReadings < 1 || mostReadings > MOST_READINGS) {
            throw new IllegalArgumentException(
                    "The number of readings lies between 1 and " + MOST_READINGS + ": " + mostReadings);
        }
    }

    /**
     * How the readings for a decision are taken.
     *
     * @param meanOf      how many make one value that is decided on, as their mean; at least 1
     * @param repeats     how many values may follow the first while it is undecided, not negative
     * @param combination how the values are combined
     */
    public record Taken(int meanOf, int repeats, Combination combination) {

        /** One reading, not repeated. */
        public static final Taken ONCE = new Taken(1, 0, Combination.LAST);

        /**
         * Checks everything.
         *
         * @throws IllegalArgumentException when a number is out of range
         */
        public Taken {
            Objects.requireNonNull(combination);
            Require.count("number of repeats", repeats);
            requireReading(meanOf);
        }

        /**
         * How many values there are at most.
         *
         * @param rule the rule that decides
         * @return 1 by a rule that leaves nothing undecided
         */
        public int most(DecisionRule rule) {
            return rule == DecisionRule.GUARDED_BOTH_WAYS ? 1 + Math.min(repeats, Integer.MAX_VALUE - 1) : 1;
        }
    }

    /**
     * The risk of a decision by a rule, on single readings or on means of several; the guard band stays that of one reading. How much of an
     * instrument's error all its readings share is seldom known; half of the variance is taken, so that repeats are neither worthless nor
     * independent. Only the rule guarded both ways leaves values undecided, so only it repeats.
     *
     * @param limits the tolerance limits, not inverted
     * @param expandedUncertainty U of one reading, above zero, in a unit without an offset
     * @param coverage k, above zero
     * @param rule the rule; the guarded ones with w = U
     * @param taken how readings are taken; repeats beyond 19 are not counted
     * @return the risk to be asked
     * @throws IllegalArgumentException when a number is out of range or dimensions differ
     */
    public static RepeatRisk of(Limits limits, Quantity expandedUncertainty, double coverage, DecisionRule rule, Taken taken) {
        Require.positive("coverage factor", coverage);
        UnitOfMeasure unit = limits.unit();
        double expanded = expandedUncertainty.in(unit.forDifferences());
        int most = taken.most(rule);
        return new RepeatRisk(limit(limits.lower(), unit), limit(limits.upper(), unit), rule.isGuarded() ? expanded : 0,
                expanded / coverage, ASSUMED_COMMON_SHARE, Math.min(most, MOST_READINGS),
                most > 1 ? taken.combination() : Combination.LAST).ofMeans(taken.meanOf());
    }

    private static OptionalDouble limit(Optional<Quantity> limit, UnitOfMeasure unit) {
        return limit.map(value -> OptionalDouble.of(value.in(unit))).orElseGet(OptionalDouble::empty);
    }

    /**
     * The probability that a unit is accepted.
     *
     * @param trueValue t
     * @return 0 to 1
     * @throws IllegalArgumentException when t is no finite number
     */
    public double acceptance(double trueValue) {
        return over(trueValue, this::acceptanceGiven, this::acceptanceOfEqualReadings);
    }

    /**
     * The probability that a unit is rejected: outside both bands at the first reading or, after undecided ones, by the
     * readings combined. What is neither accepted nor rejected stays undecided.
     *
     * @param trueValue t
     * @return 0 to 1
     * @throws IllegalArgumentException when t is no finite number
     */
    public double rejection(double trueValue) {
        return over(trueValue, this::rejectionGiven, this::rejectionOfEqualReadings);
    }

    /**
     * A probability over the error that all readings share.
     *
     * @param given    the probability for a centre of the readings and the deviation of each
     * @param ofEquals the same where all readings are alike
     */
    private double over(double trueValue, DoubleBinaryOperator given, DoubleBinaryOperator ofEquals) {
        Require.finite("true value", trueValue);
        double common = standardUncertainty * Math.sqrt(commonShare);
        double fresh = standardUncertainty * Math.sqrt(1 - commonShare);
        if (common == 0) {
            return given.applyAsDouble(trueValue, fresh);
        }
        if (fresh == 0) {
            return ofEquals.applyAsDouble(trueValue, common);
        }
        return Integral.of(z -> Normal.density(z) * given.applyAsDouble(trueValue + common * z, fresh), -Normal.REACH, Normal.REACH,
                Math.max(0.01, Math.min(1, fresh / common)));
    }

    /**
     * The largest probability of rejecting a unit that conforms: that of one just inside a limit.
     *
     * @return 0 to 1
     */
    public double worstFalseReject() {
        return Stream.of(lower, upper).flatMapToDouble(OptionalDouble::stream).map(this::rejection).max().orElseThrow();
    }

    /**
     * The largest probability of accepting a unit that does not conform: that of one just beyond a limit.
     *
     * @return 0 to 1
     */
    public double worstFalseAccept() {
        return Stream.of(lower, upper).flatMapToDouble(OptionalDouble::stream).map(this::acceptance).max().orElseThrow();
    }

    /**
     * The same arrangement without repeats, to compare.
     *
     * @return the arrangement with a single reading
     */
    public RepeatRisk withoutRepeats() {
        return new RepeatRisk(lower, upper, guardBand, standardUncertainty, commonShare, 1, combination);
    }

    /** The same arrangement where each reading is the mean of several, the guard band staying that of one. */
    private RepeatRisk ofMeans(int readings) {
        double mean = uncertaintyOfMean(standardUncertainty, commonShare, readings);
        double share = Math.min(1, commonShare * Math.pow(standardUncertainty / mean, 2));
        return new RepeatRisk(lower, upper, guardBand, mean, share, mostReadings, combination);
    }

    /**
     * The standard uncertainty of the mean of a fixed number of readings:
     * u&radic;(s + (1 - s)/n) with common share s (JCGM 100:2008, 4.2.3 and 5.2).
     *
     * @param standardUncertainty u of one reading, not negative
     * @param commonShare s, 0 to 1
     * @param readings n, at least 1
     * @return u of the mean
     * @throws IllegalArgumentException when a number is out of range
     */
    public static double uncertaintyOfMean(double standardUncertainty, double commonShare, int readings) {
        Require.notNegative("standard uncertainty", standardUncertainty);
        Require.part("common share", commonShare);
        requireReading(readings);
        return standardUncertainty * Math.sqrt(commonShare + (1 - commonShare) / readings);
    }

    private static void requireReading(int readings) {
        if (readings < 1) {
            throw new IllegalArgumentException("A mean needs a reading: " + readings);
        }
    }

    double acceptanceGiven(double centre, double deviation) {
        double firstAccepted = inside(guardBand, centre, deviation);
        if (mostReadings == 1 || nothingAccepted()) {
            return firstAccepted;
        }
        return switch (combination) {
            case MEAN -> new SequentialMean(lowerLimit(), upperLimit(), guardBand).acceptance(centre, deviation,
                    mostReadings);
            case LAST -> firstAccepted * chances(inside(-guardBand, centre, deviation) - firstAccepted);
            case BOTH_INSIDE -> {
                double withinLimits = inside(0, centre, deviation);
                yield firstAccepted + (withinLimits - firstAccepted) * withinLimits;
            }
        };
    }

    double rejectionGiven(double centre, double deviation) {
        double firstRejected = outside(guardBand, centre, deviation);
        if (mostReadings == 1) {
            return firstRejected;
        }
        return switch (combination) {
            case MEAN -> new SequentialMean(lowerLimit(), upperLimit(), guardBand).rejection(centre, deviation,
                    mostReadings);
            case LAST -> firstRejected
                    * chances(inside(-guardBand, centre, deviation) - inside(guardBand, centre, deviation));
            case BOTH_INSIDE -> {
                double beyond = outside(0, centre, deviation);
                yield firstRejected + (beyond - firstRejected) * beyond;
            }
        };
    }

    /** 1 + q + q&sup2; ... with as many terms as readings: the chances to be accepted at the first, second ... one. */
    private double chances(double undecided) {
        double sum = 0;
        for (int i = 0; i < mostReadings; i++) {
            sum = 1 + undecided * sum;
        }
        return sum;
    }

    /** All readings are alike: repeating helps only where two readings inside the limits count as accepted. */
    private double acceptanceOfEqualReadings(double trueValue, double deviation) {
        boolean bothInside = combination == Combination.BOTH_INSIDE && mostReadings > 1 && !nothingAccepted();
        return inside(bothInside ? 0 : guardBand, trueValue, deviation);
    }

    private double rejectionOfEqualReadings(double trueValue, double deviation) {
        boolean bothInside = combination == Combination.BOTH_INSIDE && mostReadings > 1;
        return outside(bothInside ? 0 : guardBand, trueValue, deviation);
    }

    private boolean nothingAccepted() {
        return lowerLimit() + guardBand > upperLimit() - guardBand;
    }

    /** The probability of a reading inside the limits drawn in by a band (let out by a negative one). */
    private double inside(double band, double centre, double deviation) {
        double from = (lowerLimit() + band - centre) / deviation;
        double to = (upperLimit() - band - centre) / deviation;
        return from >= to ? 0 : Normal.between(from, to);
    }

    /** The probability of a reading outside the limits let out by a band; small ones keep their digits. */
    private double outside(double band, double centre, double deviation) {
        return Normal.below((lowerLimit() - band - centre) / deviation) + Normal.above((upperLimit() + band - centre) / deviation);
    }

    double lowerLimit() {
        return lower.orElse(Double.NEGATIVE_INFINITY);
    }

    double upperLimit() {
        return upper.orElse(Double.POSITIVE_INFINITY);
    }
}
