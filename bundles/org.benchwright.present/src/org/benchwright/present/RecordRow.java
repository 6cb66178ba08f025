package org.benchwright.present;

import java.time.Instant;
import java.util.List;

/**
 * A test on record, open or sealed.
 *
 * @param test       its id
 * @param serial     the unit's serial number
 * @param family     its family
 * @param procedure  the procedure with its revision
 * @param technician who opened it
 * @param opened     when
 * @param state      its verdict, or that it is open
 * @param rehearsal  true if it is a rehearsal
 * @param findable   by what else it can be found: everybody who worked on it or released something, instruments by name and asset
 *                   number, departures and nonconformities in words, every day on which something was recorded
 */
public record RecordRow(String test, String serial, String family, String procedure, String technician, Instant opened, String state,
        boolean rehearsal, List<String> findable) {

    public RecordRow {
        findable = List.copyOf(findable);
    }

    /** True if every word of the search text occurs in this row, letter case ignored; an empty text finds every row. */
    public boolean matches(String search) {
        return !RecordSearch.none().and(List.of(this)).found(search).isEmpty();
    }
}
