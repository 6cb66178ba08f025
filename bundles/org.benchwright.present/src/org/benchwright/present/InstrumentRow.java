package org.benchwright.present;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * An instrument of the bench.
 *
 * @param asset       the asset number on it
 * @param title       what it is
 * @param serial      the maker's serial number, may be empty
 * @param ranges      what it reads or gives, in words
 * @param custody     where it is, or who has it; may be empty
 * @param certificate number of its last certificate, may be empty
 * @param calibrated  when it was calibrated last
 * @param due         until when that holds
 * @param state       in words: in service, past due, out of service and why
 * @param usable      false if it is past due or out of service
 */
public record InstrumentRow(String asset, String title, String serial, List<String> ranges, String custody, String certificate,
        Optional<LocalDate> calibrated, Optional<LocalDate> due, String state, boolean usable) {
    public InstrumentRow {
        ranges = List.copyOf(ranges);
    }
}
