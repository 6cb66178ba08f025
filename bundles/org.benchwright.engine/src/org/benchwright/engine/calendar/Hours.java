package org.benchwright.engine.calendar;

import java.time.LocalTime;

/**
 * Opening hours of a day, by the wall clock of the shop.
 *
 * @param from when it opens
 * @param to   when it closes; midnight is the end of the day
 */
public record Hours(LocalTime from, LocalTime to) {

    public Hours {
        if (!to.equals(LocalTime.MIDNIGHT) && !from.isBefore(to)) {
            throw new IllegalArgumentException(from + " is not before " + to);
        }
    }
}
