package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

import org.benchwright.present.WallTime;
import org.junit.jupiter.api.Test;

/** Instants by the clock on the wall of whoever reads them. */
class WallTimeTest {

    private static final Instant EVENING = Instant.parse("2026-05-31T22:04:09.999Z");

    @Test
    void asFinelyAsTheyAreRead() {
        WallTime utc = new WallTime(ZoneOffset.UTC);
        assertEquals("2026-05-31", utc.day(EVENING));
        assertEquals("2026-05-31 22:04", utc.minute(EVENING));
        assertEquals("2026-05-31 22:04:09", utc.second(EVENING));
        assertEquals("31 May 22:04", utc.near(EVENING));
        assertEquals("22:04", utc.today(EVENING));
        assertEquals("22:04:09", utc.justNow(EVENING));
    }

    @Test
    void theDayIsTheOneOnTheWall() {
        WallTime east = new WallTime(ZoneId.of("Europe/Berlin"));
        assertEquals("2026-06-01 00:04", east.minute(EVENING));
        Instant twoHoursBefore = EVENING.minusSeconds(7200);
        assertEquals("31 May 22:04", east.near(twoHoursBefore, EVENING), "yesterday there");
        assertEquals("20:04", new WallTime(ZoneOffset.UTC).near(twoHoursBefore, EVENING), "today here");
    }
}
