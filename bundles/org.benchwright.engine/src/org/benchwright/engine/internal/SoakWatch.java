package org.benchwright.engine.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

import org.benchwright.engine.event.WatchFact;

/**
 * What the watches of a test have told.
 *
 * @param number    the last watch, 0 before the first
 * @param simulated true if there is no unit behind it
 * @param seeing    true while it sees the unit as it must be
 * @param offset    its last sample on record
 * @param received  when that arrived
 * @param crossings how each condition last went out of its limits under this watch, and back
 */
record SoakWatch(int number, boolean simulated, boolean seeing, Duration offset, Instant received, Map<String, Crossing> crossings) {

    static final SoakWatch NONE = new SoakWatch(0, false, false, Duration.ZERO, Instant.MIN, Map.of());

    /**
     * A condition outside its limits.
     *
     * @param out  how it went out
     * @param back how it came back; empty while it is outside
     */
    record Crossing(WatchFact.ConditionCrossed out, Optional<WatchFact.ConditionCrossed> back) {
    }

    /** Seeing or not, after that sample. */
    SoakWatch at(WatchFact.Watcher by, boolean sees, WatchFact.Sampled last) {
        boolean other = by.number() != number;
        Duration later = !other && last.offset().compareTo(offset) < 0 ? offset : last.offset();
        Instant arrived = last.received().isBefore(received) ? received : last.received();
        return new SoakWatch(by.number(), by.simulated(), sees, later, arrived, other ? Map.of() : crossings);
    }

    /** Another watch has begun, and has not seen the unit as it must be yet. */
    SoakWatch begun(WatchFact.Watcher by) {
        return by.number() == number ? this : new SoakWatch(by.number(), by.simulated(), false, Duration.ZERO, received, Map.of());
    }

    /** After a condition went out of its limits or came back. */
    SoakWatch with(WatchFact.ConditionCrossed told) {
        Map<String, Crossing> now = new LinkedHashMap<>(crossings);
        if (told.inside()) {
            now.computeIfPresent(told.condition(), (name, crossing) -> new Crossing(crossing.out(), Optional.of(told)));
        } else {
            now.put(told.condition(), new Crossing(told, Optional.empty()));
        }
        return new SoakWatch(number, simulated, seeing, offset, received, Map.copyOf(now));
    }

    /** True while that condition is outside its limits as far as this watch knows. */
    boolean outside(String condition) {
        return Optional.ofNullable(crossings.get(condition)).filter(crossing -> crossing.back().isEmpty()).isPresent();
    }

    /** At a new attempt nothing is seen yet. */
    SoakWatch unseen() {
        return new SoakWatch(number, simulated, false, offset, received, Map.of());
    }
}
