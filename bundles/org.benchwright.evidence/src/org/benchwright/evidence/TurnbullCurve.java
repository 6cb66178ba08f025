package org.benchwright.evidence;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

import org.benchwright.evidence.internal.InnermostIntervals;
import org.benchwright.evidence.internal.Require;

/**
 * The part of units that survive a given time when stops are only known to lie between two looks, estimated without
 * assuming a shape (Peto 1973; Turnbull 1976): all weight lies on the innermost intervals, in which an interval opens and
 * the next end closes one; how it is spread within them is not known and not told.
 *
 * <p>Self-consistency is repeated until no weight could raise the mean log-likelihood by more than 10<sup>-9</sup>
 * (the conditions of Kuhn and Tucker, as in Gentleman and Geyer 1994). Assumes that the times of the looks have nothing to
 * do with the stops. Intervals are open at their beginning and closed at their end.
 *
 * @param masses the innermost intervals that bear weight, by time; the weights add up to 1
 */
public record TurnbullCurve(List<Mass> masses) {

    /**
     * One innermost interval.
     *
     * @param after it begins after this time
     * @param by it ends with this time; infinite for what outlives all looks
     * @param weight the probability of stopping in it, above 0, at most 1
     */
    public record Mass(double after, double by, double weight) {
    }

    /** Freezes the masses. */
    public TurnbullCurve {
        masses = List.copyOf(masses);
    }

    /**
     * Estimates the curve.
     *
     * @param stops at least one unit; times in one unit of time
     * @return the curve
     * @throws IllegalArgumentException when there is no unit
     */
    public static TurnbullCurve of(List<StopInterval> stops) {
        return of(StopInterval.counted(stops));
    }

    /**
     * Estimates the curve from units that are counted already.
     *
     * @param stops how many units are alike, above zero each
     * @return the curve
     * @throws IllegalArgumentException when there is no unit
     */
    public static TurnbullCurve of(Map<StopInterval, Long> stops) {
        if (stops.isEmpty()) {
            throw new IllegalArgumentException("There is no unit to estimate from.");
        }
        return new TurnbullCurve(new InnermostIntervals(stops).mostLikely());
    }

    /**
     * The part that survives a time.
     *
     * @param time not negative
     * @return S; nothing where the looks don't tell: inside an innermost interval, and after the last look
     * @throws IllegalArgumentException when the time is negative
     */
    public OptionalDouble at(double time) {
        Require.notNegative("time", time);
        double survival = 1;
        for (Mass mass : masses) {
            if (mass.by() <= time) {
                survival -= mass.weight();
            } else if (mass.after() < time) {
                return OptionalDouble.empty();
            }
        }
        return OptionalDouble.of(Math.max(0, survival));
    }
}
