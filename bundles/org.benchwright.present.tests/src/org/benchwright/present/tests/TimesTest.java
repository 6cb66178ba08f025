package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.ZoneId;

import org.benchwright.present.internal.Times;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Instants in words, by the clock of whoever reads them. */
class TimesTest {

    @ParameterizedTest
    @CsvSource({"Europe/Paris, 2026-07-01 01:59:59", "America/Phoenix, 2026-06-30 16:59:59", "Asia/Kathmandu, 2026-07-01 05:44:59", "UTC, 2026-06-30 23:59:59"})
    void onAScreenByTheClockOnTheWall(String zone, String words) {
        assertEquals(words, Times.in(ZoneId.of(zone)).words(Instant.parse("2026-06-30T23:59:59.987654Z")));
    }

    @ParameterizedTest
    @CsvSource({"2026-06-30T23:59:59.987654Z, 2026-06-30T23:59:59Z", "2026-06-30T23:59:00Z, 2026-06-30T23:59:00Z"})
    void onPaperInUtc(String instant, String words) {
        assertEquals(words, Times.inPapers().words(Instant.parse(instant)));
    }
}
