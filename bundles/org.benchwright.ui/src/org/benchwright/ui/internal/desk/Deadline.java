package org.benchwright.ui.internal.desk;

import java.time.Duration;
import java.time.Instant;

/**
 * Something that time brings, against this process's monotonic time.
 *
 * @param what    what comes
 * @param nanos   {@link System#nanoTime} when it is due
 * @param at      wall time when it is due
 * @param audible true if a tone sounds then
 */
public record Deadline(String what, long nanos, Instant at, boolean audible) {

    /** Time left; zero or less once it is due. */
    public Duration left() {
        return Duration.ofNanos(nanos - System.nanoTime());
    }
}
