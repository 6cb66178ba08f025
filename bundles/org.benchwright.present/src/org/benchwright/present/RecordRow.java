package org.benchwright.present;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
        String row = Stream.concat(Stream.of(test, serial, family, procedure, technician, state), findable.stream())
                .collect(Collectors.joining("\n")).toLowerCase(Locale.ROOT);
        return Arrays.stream(search.strip().toLowerCase(Locale.ROOT).split("\\s+")).allMatch(row::contains);
    }
}
