package org.benchwright.engine.event;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;

/** Something told to the engine: by the technician, a second person, or the bench itself. Raw text is kept as it was typed. */
public sealed interface Fact extends EventBody permits Observation, WatchFact, Fact.Opened, Fact.HazardAcknowledged, Fact.HazardKnown,
        Fact.BenchProved, Fact.Switched, Fact.Marked, Fact.ToneGiven, Fact.Questioned, Fact.Released, Fact.Applied, Fact.WaitElapsed, Fact.Struck,
        Fact.TakenOver, Fact.Identified, Fact.Placed, Fact.Noted, Fact.Abandoned, Fact.Interrupted, Fact.PowerAnswered, Fact.ClockChanged {

    /**
     * The test begins.
     *
     * @param serial          the unit's serial number
     * @param family          the unit's family
     * @param procedure       the procedure's name
     * @param revision        its revision
     * @param text            digest of the procedure's text with all that it refers to
     * @param plan            digest of the compiled plan
     * @param station         where
     * @param software        what carried it out
     * @param rehearsal       true: no verdict will be derived
     * @param predecessor     the test of this unit that this one follows, if any
     * @param approval        the approval that it relies on; empty for a rehearsal, and in tests from before revisions were approved
     * @param receipt         how the unit came in, as far as that is on record; empty for a rehearsal
     * @param mended          what was replaced or mended since its predecessor, if anything is on record
     * @param books           how far the bench knew the books when it relied on that approval; empty where there is none
     * @param shift           how long a person remembers a hazard that they have read; empty in tests from before that was asked
     */
    record Opened(String serial, String family, String procedure, int revision, Digest text, Digest plan, String station,
            String software, boolean rehearsal, Optional<String> predecessor, Optional<Approval> approval, Optional<Arrival> receipt,
            Optional<Mended> mended, Optional<KnownBooks> books, Optional<Duration> shift) implements Fact {

        /** A test of a unit of which nothing but its serial number is on record. */
        public Opened(String serial, String family, String procedure, int revision, Digest text, Digest plan, String station,
                String software, boolean rehearsal, Optional<String> predecessor, Optional<Approval> approval) {
            this(serial, family, procedure, revision, text, plan, station, software, rehearsal, predecessor, approval, Optional.empty(),
                    Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    /** A hazard was read and understood. */
    record HazardAcknowledged(String hazard) implements Fact {
    }

    /**
     * The same person has read this hazard before in the same shift, for the same revision: it need not be read again. Never a danger.
     *
     * @param hazard  its name
     * @param test    the test in which it was read, may be this one
     * @param event   the event there
     * @param instant when
     */
    record HazardKnown(String hazard, String test, long event, Instant instant) implements Fact {
    }

    /**
     * The bench was proved with a known-good unit, so that something may be energised on it.
     *
     * @param test    the accepted test that proved it
     * @param event   the event there by which it was concluded
     * @param instant when that was
     * @param until   until when it proves the bench, by what its own procedure says
     */
    record BenchProved(String test, long event, Instant instant, Instant until) implements Fact {
    }

    /** An item was switched on (live) or off and isolated. */
    record Switched(String item, boolean live) implements Fact {
    }

    /** The mark key was pressed. */
    record Marked(String mark) implements Fact {
    }

    /**
     * A tone sounded for an expectation.
     *
     * @param check the expectation's id
     * @param tone  which of its tones
     */
    record ToneGiven(String check, Tone tone) implements Fact {
        /** The tones of an expectation. */
        public enum Tone {
            OPENS, CLOSES
        }
    }

    /**
     * A reading that looks like a slip of the decimal point was questioned. It is no reading: whoever sees it on the instrument enters it
     * once more.
     *
     * @param check   the measurement's or grid's id
     * @param raw     as typed
     * @param value   as read
     * @param instead what it may have been meant for
     */
    record Questioned(String check, String raw, Quantity value, Quantity instead) implements Fact {
    }

    /**
     * A release was given or refused.
     *
     * @param check the id of what asked for it
     * @param by    whose release
     * @param given false: refused
     */
    record Released(String check, Actor by, boolean given) implements Fact {
    }

    /** A stimulus or load was applied. */
    record Applied(String check) implements Fact {
    }

    /** A waiting time has passed. */
    record WaitElapsed(String check) implements Fact {
    }

    /** The last observation was a slip and is struck; it stays readable. */
    record Struck(long sequence) implements Fact {
    }

    /**
     * Another technician goes on with the test, who tells it; nobody left it alone in between.
     *
     * @param from who had it before
     */
    record TakenOver(String from) implements Fact {
    }

    /** The unit's serial number was scanned or typed, so that nothing is entered for its neighbour. */
    record Identified(String serial) implements Fact {
    }

    /** The unit stands at a position of the rack. */
    record Placed(String position) implements Fact {
    }

    /** A free note. */
    record Noted(String text) implements Fact {
    }

    /** The make-safe key: the test ends undecided once the unit is safe. */
    record Abandoned(String reason) implements Fact {
    }

    /**
     * Work on the test was interrupted; recorded when it goes on.
     *
     * @param gap wall time since the last event before it, never below zero
     */
    record Interrupted(Duration gap) implements Fact {
    }

    /** Whether the unit kept its power through the interruption; no if it is not known. */
    record PowerAnswered(boolean kept) implements Fact {
    }

    /** Wall time was stepped against monotonic time; positive is forward. */
    record ClockChanged(Duration by) implements Fact {
    }
}
