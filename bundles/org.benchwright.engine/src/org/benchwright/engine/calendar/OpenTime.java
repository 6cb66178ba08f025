package org.benchwright.engine.calendar;

import java.time.Instant;

/**
 * A time in which somebody is in.
 *
 * @param from its first instant
 * @param to   the first instant behind it
 */
public record OpenTime(Instant from, Instant to) {

    public OpenTime {
        if (!from.isBefore(to)) {
            throw new IllegalArgumentException(from + " is not before " + to);
        }
    }

    /** Whether somebody is in at that instant. */
    public boolean holds(Instant instant) {
        return !instant.isBefore(from) && instant.isBefore(to);
    }
}
