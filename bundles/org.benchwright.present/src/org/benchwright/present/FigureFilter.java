package org.benchwright.present;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;

/**
 * Which tests figures count.
 *
 * @param family only of this family, by its name in the language
 * @param serial only of this unit, such as the known-good one
 * @param from   opened on this day or later
 * @param to     opened on this day or earlier
 * @param zone   in which days begin
 * @param today  up to which day units count that are still out there
 */
public record FigureFilter(Optional<String> family, Optional<String> serial, Optional<LocalDate> from, Optional<LocalDate> to, ZoneId zone,
        LocalDate today) {

    /** Every test. */
    public static FigureFilter all(ZoneId zone, LocalDate today) {
        return new FigureFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), zone, today);
    }
}
