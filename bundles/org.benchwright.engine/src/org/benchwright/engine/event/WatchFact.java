package org.benchwright.engine.event;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;

/**
 * Told by a watch. A watch is a process of its own, which has no part in the sittings of people: the event's offset stays that of the
 * event before, and the watch's own times stand in the payload.
 */
public sealed interface WatchFact extends Fact {

    /** The soak's name. */
    String stage();

    /** Which watch tells it. */
    Watcher by();

    /**
     * A watch.
     *
     * @param number    counts the watches of a test, from 1; each start of the process is another
     * @param simulated true if there is no unit behind it: for rehearsals only
     */
    record Watcher(int number, boolean simulated) {
    }

    /**
     * When a sample was taken.
     *
     * @param received wall time at which it arrived
     * @param offset   monotonic time since the watch began; comparable within one watch only
     * @param source   the unit's own time, where it tells one; its clock may be wrong
     */
    record Sampled(Instant received, Duration offset, Optional<Instant> source) {
    }

    /**
     * A watch sees the unit, for the first time or again, and finds it as it must be.
     *
     * @param source what it looks at, such as {@code modbus 192.0.2.7:502 unit 1}
     * @param at     the first sample
     */
    record Sees(String stage, Watcher by, String source, Sampled at) implements WatchFact {
    }

    /**
     * A run of equal samples: all the time the unit was as it must be. The first run begins with the sample of {@code Sees}, every
     * other not before the last sample on record.
     *
     * @param from       its first sample
     * @param to         its last one
     * @param samples    how many, both included
     * @param missed     how many of those asked for between them did not arrive; never so many in a row that it would be silence
     * @param conditions what was read meanwhile, condition by condition
     */
    record Held(String stage, Watcher by, Sampled from, Sampled to, long samples, long missed, List<ConditionRange> conditions)
            implements WatchFact {
        public Held {
            conditions = List.copyOf(conditions);
        }
    }

    /**
     * The range of a condition during a run.
     *
     * @param condition its name
     * @param low       the lowest reading
     * @param high      the highest
     */
    record ConditionRange(String condition, Quantity low, Quantity high) {
    }

    /**
     * The unit was not as it must be. When it changed lies between two samples.
     *
     * @param lastGood the last sample that was as it must be; empty where this watch has not seen it so since it began or was silent
     * @param firstBad the first that was not
     * @param bad      how many of them there were in a row so far; as many as the procedure states are a stop
     * @param shows    what it showed then
     */
    record Changed(String stage, Watcher by, Optional<Sampled> lastGood, Sampled firstBad, int bad, String shows) implements WatchFact {
    }

    /**
     * A condition went out of its limits, or came back. When it did lies between two samples.
     *
     * @param inside true if it is inside now
     * @param before the last sample before; empty where this watch had not read it yet since it began or was silent
     * @param after  the first one after
     * @param value  what that one read
     */
    record ConditionCrossed(String stage, Watcher by, String condition, boolean inside, Optional<Sampled> before, Sampled after, Quantity value)
            implements WatchFact {
    }

    /**
     * A watch cannot see the unit, or was ended. Nothing from its last sample on is evidence.
     *
     * @param lastSeen its last sample; empty where it has not seen the unit yet
     * @param why      what keeps it from seeing, in plain words
     */
    record Silent(String stage, Watcher by, Optional<Sampled> lastSeen, String why) implements WatchFact {
    }
}
