package org.benchwright.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.benchwright.evidence.internal.Require;

/**
 * Between which two times a unit stopped: known to the instant when it was watched, to the time between two looks when it
 * was looked at now and then, and to "later than the last look" when it never stopped.
 *
 * @param after the last time at which it was seen working, not negative
 * @param by the first time at which it was seen stopped; infinite when it never was; equal to {@code after} when the
 *        instant is known
 */
public record StopInterval(double after, double by) {

    /**
     * Checks the times.
     *
     * @throws IllegalArgumentException when a time is negative or undefined, they are inverted, or an instant is zero
     */
    public StopInterval {
        Require.notNegative("last time seen working", after);
        if (!(by >= after) || by == 0) {
            throw new IllegalArgumentException("A unit can't be seen stopped at " + by + " and working at " + after);
        }
    }

    /**
     * A stop whose instant is known.
     *
     * @param time above zero
     * @return the interval
     */
    public static StopInterval at(double time) {
        return new StopInterval(time, time);
    }

    /**
     * A unit that never stopped.
     *
     * @param lastSeen when it was last seen working
     * @return the interval
     */
    public static StopInterval never(double lastSeen) {
        return new StopInterval(lastSeen, Double.POSITIVE_INFINITY);
    }

    /**
     * Counts units that are alike, so that many are reckoned with as fast as few.
     *
     * @param stops one for each unit
     * @return how many are alike
     */
    public static Map<StopInterval, Long> counted(List<StopInterval> stops) {
        Map<StopInterval, Long> counted = new LinkedHashMap<>();
        stops.forEach(stop -> counted.merge(stop, 1L, Long::sum));
        return counted;
    }

    /**
     * Whether it stopped.
     *
     * @return false when it was never seen stopped
     */
    public boolean stopped() {
        return by < Double.POSITIVE_INFINITY;
    }

    /**
     * Whether the instant of the stop is known.
     *
     * @return true when it is
     */
    public boolean exact() {
        return after == by;
    }
}
