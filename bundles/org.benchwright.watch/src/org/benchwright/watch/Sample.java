package org.benchwright.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * When a sample was taken.
 *
 * @param received wall time at which it arrived
 * @param offset   monotonic time since the watch began
 * @param source   the unit's own time, where it tells one
 */
public record Sample(Instant received, Duration offset, Optional<Instant> source) {
}
