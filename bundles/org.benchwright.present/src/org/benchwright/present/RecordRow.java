package org.benchwright.present;

import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;

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
 */
public record RecordRow(String test, String serial, String family, String procedure, String technician, Instant opened, String state,
        boolean rehearsal) {

    /** True if every word of the search text occurs in this row, letter case ignored; an empty text finds every row. */
    public boolean matches(String search) {
        String row = String.join(" ", test, serial, family, procedure, technician, opened.toString(), state).toLowerCase(Locale.ROOT);
        return Arrays.stream(search.strip().toLowerCase(Locale.ROOT).split("\\s+")).allMatch(row::contains);
    }
}
