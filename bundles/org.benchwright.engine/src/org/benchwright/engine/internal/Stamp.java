package org.benchwright.engine.internal;

import java.time.Duration;

import org.benchwright.engine.event.Moment;

/**
 * A moment and how old the test was then. Ages grow from event to event: by the monotonic clock within a sitting, by wall time only
 * across the gap between two sittings. So no stepped wall clock shortens or lengthens what is timed by age.
 *
 * @param moment when
 * @param age    time since the test was opened, never falling
 */
record Stamp(Moment moment, Duration age) {
}
