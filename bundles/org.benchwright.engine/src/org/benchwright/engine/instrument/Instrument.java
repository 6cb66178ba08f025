package org.benchwright.engine.instrument;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * An instrument of the bench as it stands.
 *
 * @param asset       the asset number on it
 * @param title       what it is
 * @param serial      the maker's serial number, may be empty
 * @param ranges      what it reads or gives
 * @param custody     where it is, or who has it
 * @param certificate number of its last certificate, empty as long as there is none
 * @param calibrated  when it was calibrated last
 * @param due         until when that holds
 * @param retired     why it is out of service, if it is
 * @param statement   number of the event that said something about it last
 */
public record Instrument(String asset, String title, String serial, List<InstrumentRange> ranges, String custody, String certificate,
        Optional<LocalDate> calibrated, Optional<LocalDate> due, Optional<String> retired, long statement) {

    public Instrument {
        ranges = List.copyOf(ranges);
    }
}
