package org.benchwright.evidence;

import org.benchwright.evidence.internal.Require;

/**
 * How long one unit was under observation, and how that ended.
 *
 * @param time above zero, in one unit of time for all units that are looked at together
 * @param failed true when it failed then; false when it still worked when last seen
 */
public record Lifetime(double time, boolean failed) {

    /**
     * Checks the time.
     *
     * @throws IllegalArgumentException when it is not above zero
     */
    public Lifetime {
        Require.positive("time under observation", time);
    }

    /**
     * A unit that failed.
     *
     * @param time when
     * @return the lifetime
     */
    public static Lifetime failedAt(double time) {
        return new Lifetime(time, true);
    }

    /**
     * A unit that still worked when last seen.
     *
     * @param time when it was last seen
     * @return the lifetime so far
     */
    public static Lifetime aliveAt(double time) {
        return new Lifetime(time, false);
    }
}
