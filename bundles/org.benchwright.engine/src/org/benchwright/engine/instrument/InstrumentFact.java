package org.benchwright.engine.instrument;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Something that is signed about an instrument. */
public sealed interface InstrumentFact {

    /** The asset number on it. */
    String asset();

    /**
     * It is used here from now on.
     *
     * @param title   what it is
     * @param serial  the maker's serial number, may be empty
     * @param ranges  what it reads or gives
     * @param custody where it is, or who has it
     */
    record Added(String asset, String title, String serial, List<InstrumentRange> ranges, String custody) implements InstrumentFact {
        public Added {
            ranges = List.copyOf(ranges);
        }
    }

    /**
     * It was calibrated.
     *
     * @param certificate number of the certificate
     * @param on          when
     * @param due         until when that holds; empty where it is never due
     * @param ranges      its ranges as they were found; empty: as before
     */
    record Calibrated(String asset, String certificate, LocalDate on, Optional<LocalDate> due, List<InstrumentRange> ranges)
            implements InstrumentFact {
        public Calibrated {
            ranges = List.copyOf(ranges);
        }
    }

    /** It is elsewhere, or somebody else has it. */
    record Moved(String asset, String custody) implements InstrumentFact {
    }

    /** It is out of service. */
    record Retired(String asset, String reason) implements InstrumentFact {
    }

    /** It is in service again. */
    record Reinstated(String asset, String reason) implements InstrumentFact {
    }
}
