package org.benchwright.engine.event;

import java.time.Duration;
import java.time.Instant;

/**
 * When something happened, on two clocks.
 *
 * @param instant UTC wall time; it may be stepped by people and by time servers
 * @param sitting counts the processes that have worked on the test, from 1
 * @param offset  monotonic time since the sitting began; comparable within one sitting only
 */
public record Moment(Instant instant, int sitting, Duration offset) {

    /**
     * Time from {@code earlier} to this moment: by the monotonic clock within one sitting, by wall time across sittings and then
     * never below zero.
     */
    public Duration since(Moment earlier) {
        if (sitting == earlier.sitting) {
            return offset.minus(earlier.offset);
        }
        Duration byWall = Duration.between(earlier.instant, instant);
        return byWall.isNegative() ? Duration.ZERO : byWall;
    }
}
