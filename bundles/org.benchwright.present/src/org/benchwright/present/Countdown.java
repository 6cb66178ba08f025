package org.benchwright.present;

import java.time.Duration;
import java.time.Instant;

/**
 * Something that time brings.
 *
 * @param what    what comes
 * @param left    time left; zero or less once it is due
 * @param at      wall time when it is due
 * @param audible true if a tone sounds then
 */
public record Countdown(String what, Duration left, Instant at, boolean audible) {

    /** True once it has come. */
    public boolean due() {
        return left.isZero() || left.isNegative();
    }
}
