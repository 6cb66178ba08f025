package org.benchwright.engine.event;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.ReplacedPart;

/** Something told to the engine: by the technician, a second person, or the bench itself. Raw text is kept as it was typed. */
public sealed interface Fact extends EventBody {

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
            Optional<Mended> mended, Optional<Books> books, Optional<Duration> shift) implements Fact {

        /** A test from before it was asked how long a hazard is remembered. */
        public Opened(String serial, String family, String procedure, int revision, Digest text, Digest plan, String station,
                String software, boolean rehearsal, Optional<String> predecessor, Optional<Approval> approval, Optional<Arrival> receipt,
                Optional<Mended> mended, Optional<Books> books) {
            this(serial, family, procedure, revision, text, plan, station, software, rehearsal, predecessor, approval, receipt, mended, books,
                    Optional.empty());
        }

        /** An opening that relies on no book. */
        public Opened(String serial, String family, String procedure, int revision, Digest text, Digest plan, String station,
                String software, boolean rehearsal, Optional<String> predecessor, Optional<Approval> approval, Optional<Arrival> receipt,
                Optional<Mended> mended) {
            this(serial, family, procedure, revision, text, plan, station, software, rehearsal, predecessor, approval, receipt, mended,
                    Optional.empty(), Optional.empty());
        }

        /** A test of a unit of which nothing but its serial number is on record. */
        public Opened(String serial, String family, String procedure, int revision, Digest text, Digest plan, String station,
                String software, boolean rehearsal, Optional<String> predecessor, Optional<Approval> approval) {
            this(serial, family, procedure, revision, text, plan, station, software, rehearsal, predecessor, approval, Optional.empty(),
                    Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    /**
     * How far a bench knew the books. Where benches share a ledger, the books there may have gone on before the test arrives.
     *
     * @param people    number of the last event about people
     * @param revisions number of the last event about revisions
     */
    record Books(long people, long revisions) {
    }

    /**
     * How a unit came in, as the book of receipts tells it when the test is opened.
     *
     * @param receipt   number of the receipt
     * @param statement number of the event in that book that says so
     * @param instant   when it came in
     * @param order     the order, may be empty
     * @param owner     whose it is, may be empty
     * @param plate     what its type plate told
     * @param complaint what its owner says, may be empty
     * @param damage    what was seen from outside, may be empty
     * @param preserve  what must not be lost, may be empty
     */
    record Arrival(long receipt, long statement, Instant instant, String order, String owner, Plate plate, String complaint, String damage,
            String preserve) {
    }

    /** What was replaced or mended in a unit since the test before. */
    record Mended(List<RepairDone> repairs) {
        public Mended {
            repairs = List.copyOf(repairs);
        }
    }

    /**
     * A repair, as the book of receipts tells it.
     *
     * @param event   its number there
     * @param instant when
     * @param by      by whom
     * @param what    what was done, may be empty
     * @param parts   what was replaced
     */
    record RepairDone(long event, Instant instant, String by, String what, List<ReplacedPart> parts) {
        public RepairDone {
            parts = List.copyOf(parts);
        }
    }

    /**
     * The approval of a revision, as a test names it.
     *
     * @param event      number of the approval among what was signed about revisions
     * @param preparedBy who prepared the revision
     * @param approvedBy who approved it
     * @param instant    when it was approved
     */
    record Approval(long event, String preparedBy, String approvedBy, Instant instant) {
    }

    /**
     * Answer to a precondition.
     *
     * @param precondition its name
     * @param met          whether the technician says that it holds
     * @param text         the text entered with it, empty where none was asked for
     * @param reading      the reading entered, where one was asked for
     */
    record PreconditionAnswered(String precondition, boolean met, String text, Optional<Quantity> reading) implements Fact {
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

    /**
     * Which instrument is used.
     *
     * @param instrument  its name in the plan
     * @param asset       the asset number on it
     * @param uncertainty expanded uncertainty by its register entry or certificate; empty where the plan states none
     * @param coverage    the coverage factor of {@code uncertainty}
     * @param due         when its calibration is due; empty where it needs none
     * @param entry       its entry in the register of instruments; empty if it is in none and the rest was told by hand
     */
    record InstrumentNamed(String instrument, String asset, Optional<Quantity> uncertainty, BigDecimal coverage,
            Optional<LocalDate> due, Optional<RegisterEntry> entry) implements Fact {

        /** An instrument that is in no register. */
        public InstrumentNamed(String instrument, String asset, Optional<Quantity> uncertainty, BigDecimal coverage, Optional<LocalDate> due) {
            this(instrument, asset, uncertainty, coverage, due, Optional.empty());
        }
    }

    /**
     * What the register of instruments told when an instrument was named.
     *
     * @param statement   number of the event there that said something about it last
     * @param title       what it is
     * @param serial      the maker's serial number, may be empty
     * @param ranges      what it reads or gives, how accurately
     * @param certificate number of its certificate, may be empty
     * @param calibrated  when it was calibrated
     * @param custody     where it was, or who had it
     * @param retired     why it was out of service; such an instrument is refused
     */
    record RegisterEntry(long statement, String title, String serial, List<InstrumentRange> ranges, String certificate, Optional<LocalDate> calibrated,
            String custody, Optional<String> retired) {
        public RegisterEntry {
            ranges = List.copyOf(ranges);
        }
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
     * Answer to an expectation.
     *
     * @param check  its id
     * @param answer what was seen
     * @param asSeen the technician's words, may be empty
     */
    record Seen(String check, Sight answer, String asSeen) implements Fact {
    }

    /** What was seen of something expected. */
    enum Sight {
        /** As expected. */
        YES,
        /** Not as expected. */
        NO,
        /** Nobody looked: voids the check and repeats it. */
        NOT_LOOKING
    }

    /**
     * A flashing lamp was tapped along with. The rate follows from the taps, and the answer to the expectation from the rate.
     *
     * @param check the expectation's id
     * @param taps  when each tap came, from the first one on, which is zero
     */
    record Tapped(String check, List<Duration> taps) implements Fact {
        public Tapped {
            taps = List.copyOf(taps);
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

    /** A measurement was entered. */
    record Measured(String check, String raw, Quantity value) implements Fact {
    }

    /**
     * A cell of a grid was entered.
     *
     * @param check the grid's id
     * @param cell  from 0, in the order of the grid
     */
    record CellRead(String check, int cell, String raw, Quantity value) implements Fact {
    }

    /** Why something is done again. */
    record ReasonGiven(String check, String reason) implements Fact {
    }

    /** Text was entered. */
    record TextEntered(String check, String text) implements Fact {
    }

    /** The unit's fault log was entered. */
    record FaultLogEntered(String check, List<FaultLine> lines) implements Fact {
        public FaultLogEntered {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A line of a fault log.
     *
     * @param code the code as it stands there
     * @param text the rest of the line, may be empty
     */
    record FaultLine(String code, String text) {
    }

    /** A statement was confirmed or denied. */
    record Confirmed(String check, boolean yes) implements Fact {
    }

    /** Two entries to compare. */
    record Compared(String check, String left, String right) implements Fact {
    }

    /**
     * A file was attached.
     *
     * @param digest of its content, which the ledger keeps
     * @param name   the file's name without its folder
     */
    record Attached(String check, Digest digest, String name) implements Fact {
    }

    /** One item of a choice was confirmed or denied. */
    record ItemConfirmed(String check, String item, boolean yes) implements Fact {
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

    /**
     * A look at a unit on soak; the first one begins it.
     *
     * @param stage    the soak's name
     * @param answer   whether the unit shows the mode that it must keep
     * @param asSeen   the technician's words, may be empty
     * @param readings the conditions, in the order of the plan
     */
    record Looked(String stage, Sight answer, String asSeen, List<ConditionReading> readings) implements Fact {
        public Looked {
            readings = List.copyOf(readings);
        }
    }

    /**
     * A reading of a condition.
     *
     * @param condition its name
     * @param raw       as typed
     * @param value     as read
     */
    record ConditionReading(String condition, String raw, Quantity value) {
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

    // ---- unattended observation

    /**
     * Told by a watch. A watch is a process of its own, which has no part in the sittings of people: the event's offset stays that of the
     * event before, and the watch's own times stand in the payload.
     */
    sealed interface Watched extends Fact {
        /** The soak's name. */
        String stage();

        /** Which watch tells it. */
        Watcher by();
    }

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
    record WatchSees(String stage, Watcher by, String source, Sampled at) implements Watched {
    }

    /**
     * A run of equal samples: all the time the unit was as it must be. The first run begins with the sample of {@code WatchSees}, every
     * other not before the last sample on record.
     *
     * @param from       its first sample
     * @param to         its last one
     * @param samples    how many, both included
     * @param missed     how many of those asked for between them did not arrive; never so many in a row that it would be silence
     * @param conditions what was read meanwhile, condition by condition
     */
    record WatchHeld(String stage, Watcher by, Sampled from, Sampled to, long samples, long missed, List<ConditionRange> conditions)
            implements Watched {
        public WatchHeld {
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
    record WatchChanged(String stage, Watcher by, Optional<Sampled> lastGood, Sampled firstBad, int bad, String shows) implements Watched {
    }

    /**
     * A condition went out of its limits, or came back. When it did lies between two samples.
     *
     * @param inside true if it is inside now
     * @param before the last sample before; empty where this watch had not read it yet since it began or was silent
     * @param after  the first one after
     * @param value  what that one read
     */
    record WatchCondition(String stage, Watcher by, String condition, boolean inside, Optional<Sampled> before, Sampled after, Quantity value)
            implements Watched {
    }

    /**
     * A watch cannot see the unit, or was ended. Nothing from its last sample on is evidence.
     *
     * @param lastSeen its last sample; empty where it has not seen the unit yet
     * @param why      what keeps it from seeing, in plain words
     */
    record WatchSilent(String stage, Watcher by, Optional<Sampled> lastSeen, String why) implements Watched {
    }
}
