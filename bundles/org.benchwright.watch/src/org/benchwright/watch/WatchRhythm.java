package org.benchwright.watch;

import java.time.Duration;

/**
 * How a unit is watched.
 *
 * @param every        time from one sample to the next
 * @param stopAfterBad bad samples in a row that make a stop
 * @param silentAfter  missed samples in a row that make silence
 * @param longestRun   a run is written down at least this often
 */
public record WatchRhythm(Duration every, int stopAfterBad, int silentAfter, Duration longestRun) {

    /** How often a run is written down where nothing else is said. */
    public static final Duration LONGEST_RUN = Duration.ofMinutes(10);

    public WatchRhythm {
        if (every.isNegative() || every.isZero() || stopAfterBad < 1 || silentAfter < 1 || longestRun.compareTo(every) < 0) {
            throw new IllegalArgumentException("no rhythm: " + every + ", " + stopAfterBad + ", " + silentAfter + ", " + longestRun);
        }
    }
}
