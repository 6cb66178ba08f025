package org.benchwright.engine.event;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.engine.instrument.InstrumentRange;

/**
 * What the technician saw or entered. The last one can be struck as a slip until the next; it stays readable. Raw text is kept as it was typed.
 */
public sealed interface Observation extends Fact {

    /**
     * Answer to a precondition.
     *
     * @param precondition its name
     * @param met          whether the technician says that it holds
     * @param text         the text entered with it, empty where none was asked for
     * @param reading      the reading entered, where one was asked for
     */
    record PreconditionAnswered(String precondition, boolean met, String text, Optional<Quantity> reading) implements Observation {
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
            Optional<LocalDate> due, Optional<RegisterEntry> entry) implements Observation {

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

    /**
     * Answer to an expectation.
     *
     * @param check  its id
     * @param answer what was seen
     * @param asSeen the technician's words, may be empty
     */
    record Seen(String check, Sight answer, String asSeen) implements Observation {
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
    record Tapped(String check, List<Duration> taps) implements Observation {
        public Tapped {
            taps = List.copyOf(taps);
        }
    }

    /** A measurement was entered. */
    record Measured(String check, String raw, Quantity value) implements Observation {
    }

    /**
     * A cell of a grid was entered.
     *
     * @param check the grid's id
     * @param cell  from 0, in the order of the grid
     */
    record CellRead(String check, int cell, String raw, Quantity value) implements Observation {
    }

    /** Why something is done again. */
    record ReasonGiven(String check, String reason) implements Observation {
    }

    /** Text was entered. */
    record TextEntered(String check, String text) implements Observation {
    }

    /** The unit's fault log was entered. */
    record FaultLogEntered(String check, List<FaultLine> lines) implements Observation {
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
    record Confirmed(String check, boolean yes) implements Observation {
    }

    /** Two entries to compare. */
    record Compared(String check, String left, String right) implements Observation {
    }

    /**
     * A file was attached.
     *
     * @param digest of its content, which the ledger keeps
     * @param name   the file's name without its folder
     */
    record Attached(String check, Digest digest, String name) implements Observation {
    }

    /** One item of a choice was confirmed or denied. */
    record ItemConfirmed(String check, String item, boolean yes) implements Observation {
    }

    /**
     * A look at a unit on soak; the first one begins it.
     *
     * @param stage    the soak's name
     * @param answer   whether the unit shows the mode that it must keep
     * @param asSeen   the technician's words, may be empty
     * @param readings the conditions, in the order of the plan
     */
    record Looked(String stage, Sight answer, String asSeen, List<ConditionReading> readings) implements Observation {
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
}
