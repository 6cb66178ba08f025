package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.benchwright.engine.calendar.CalendarFormatException;
import org.benchwright.engine.calendar.CalendarText;
import org.benchwright.engine.calendar.OpenTime;
import org.benchwright.engine.calendar.ShopCalendar;
import org.benchwright.engine.calendar.SoakTimes;
import org.benchwright.engine.calendar.SoakTimes.Rhythm;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** When somebody is in, and which looks of a soak that leaves out; also where clocks are put forward and back. */
class ShopCalendarTest implements PropertyTest {

    private static final String WEEK = """
            zone Europe/Paris
            1-4 07:00-12:00 12:30-16:30
            5 07:00-14:00   # early
            closed 2026-12-24..2027-01-01
            2026-03-07 08:00-12:00
            """;
    private static final List<String> ZONES = List.of("Europe/Paris", "America/New_York", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC", "America/Santiago",
            "Africa/Cairo");

    private static ShopCalendar calendar(String text) {
        try {
            return CalendarText.read(text);
        } catch (CalendarFormatException wrong) {
            throw new AssertionError(wrong.line() + ": " + wrong.getMessage(), wrong);
        }
    }

    private static Instant at(String local) {
        return LocalDateTime.parse(local).atZone(ZoneId.of("Europe/Paris")).toInstant();
    }

    private static Rhythm rhythm(String lasting, String every, String tolerance) {
        return new Rhythm(Parts.duration(lasting), Parts.duration(every), Parts.duration(tolerance));
    }

    @Test
    void hoursAreByTheWallClockAndEndBeforeTheirLastInstant() {
        ShopCalendar week = calendar(WEEK);
        assertFalse(week.isOpen(at("2026-03-02T06:59:59")));
        assertTrue(week.isOpen(at("2026-03-02T07:00:00")));
        assertFalse(week.isOpen(at("2026-03-02T12:00:00")));
        assertTrue(week.isOpen(at("2026-03-02T12:30:00")));
        assertFalse(week.isOpen(at("2026-03-06T14:00:00")));
        assertTrue(week.isOpen(at("2026-03-07T08:00:00")), "a Saturday with hours of its own");
        assertFalse(week.isOpen(at("2026-03-08T08:00:00")));
        assertFalse(week.isOpen(at("2026-12-24T08:00:00")));
        assertFalse(week.isOpen(at("2027-01-01T08:00:00")));
        assertEquals(Optional.of(at("2027-01-04T07:00:00")), week.nextOpen(at("2026-12-23T16:30:00")));
        assertEquals(Optional.of(at("2026-03-02T08:00:00")), week.nextOpen(at("2026-03-02T08:00:00")));
    }

    @Test
    void nobodyIsInForMoreThanAYear() {
        ShopCalendar never = calendar("zone UTC\n1-7 08:00-16:00\nclosed 2026-01-01..2028-12-31\n");
        assertEquals(Optional.empty(), never.nextOpen(Instant.parse("2026-03-02T00:00:00Z")));
    }

    /** On the last Sunday in March the clock jumps from two to three: opening hours in between are none, and noon is one hour earlier by UTC. */
    @Test
    void whereTheClockIsPutForward() {
        ShopCalendar nights = calendar("zone Europe/Paris\n7 02:00-03:00 11:00-13:00\n");
        List<OpenTime> sunday = nights.on(LocalDate.parse("2026-03-29"));
        assertEquals(List.of(new OpenTime(Instant.parse("2026-03-29T09:00:00Z"), Instant.parse("2026-03-29T11:00:00Z"))), sunday);
        assertEquals(Instant.parse("2026-03-22T10:00:00Z"), nights.on(LocalDate.parse("2026-03-22")).get(1).from());
    }

    /** On the last Sunday in October the hour from two to three comes twice: who opens then is in for two hours. */
    @Test
    void whereTheClockIsPutBack() {
        ShopCalendar nights = calendar("zone Europe/Paris\n7 02:00-03:00 23:00-24:00\n");
        OpenTime twice = nights.on(LocalDate.parse("2026-10-25")).get(0);
        assertEquals(Duration.ofHours(2), Duration.between(twice.from(), twice.to()));
        assertTrue(nights.isOpen(Instant.parse("2026-10-25T00:30:00Z")));
        assertTrue(nights.isOpen(Instant.parse("2026-10-25T01:30:00Z")));
        assertEquals(at("2026-10-26T00:00:00"), nights.on(LocalDate.parse("2026-10-25")).get(1).to());
    }

    @Test
    void aLookThatIsDueOnSaturdayIsToldAndALaterStartOffered() {
        ShopCalendar week = calendar("zone Europe/Paris\n1-5 07:00-17:00\n");
        Rhythm soak = rhythm("72 h", "24 h", "1 h");
        SoakTimes friday = SoakTimes.of(week, at("2026-03-05T15:00:00"), soak);
        assertEquals(at("2026-03-08T15:00:00"), friday.end());
        assertEquals(List.of(at("2026-03-07T15:00:00"), at("2026-03-08T15:00:00")), friday.unattended());
        SoakTimes better = SoakTimes.better(week, at("2026-03-05T15:00:00"), soak).orElseThrow();
        assertEquals(at("2026-03-09T07:00:00"), better.start());
        assertEquals(List.of(), better.unattended());
        assertEquals(Optional.empty(), SoakTimes.better(week, at("2026-03-09T07:00:00"), soak), "there is nothing better than good");
    }

    /** Nobody is in at night: with looks every eight hours each night costs one, wherever the soak begins. */
    @Test
    void whereNoStartIsGoodTheLeastBadOneIsOffered() {
        ShopCalendar week = calendar("zone Europe/Paris\n1-5 07:00-17:00\n");
        SoakTimes now = SoakTimes.of(week, at("2026-03-05T15:00:00"), rhythm("48 h", "8 h", "0 h"));
        SoakTimes better = SoakTimes.better(week, at("2026-03-05T15:00:00"), rhythm("48 h", "8 h", "0 h")).orElseThrow();
        assertTrue(better.unattended().size() < now.unattended().size());
        assertFalse(better.unattended().isEmpty());
    }

    /** The night of the change has 23 hours: a look every 24 h that was due at eight is due at nine. */
    @Test
    void hoursOfASoakAreHoursAndNotDaysOfTheWallClock() {
        ShopCalendar week = calendar("zone Europe/Paris\n1-7 07:00-08:30\n");
        SoakTimes soak = SoakTimes.of(week, at("2026-03-28T08:00:00"), rhythm("48 h", "24 h", "0 h"));
        assertEquals(List.of(at("2026-03-29T09:00:00"), at("2026-03-30T09:00:00")), soak.unattended());
    }

    @ParameterizedTest
    @ValueSource(strings = {"zone Nowhere/Else", "zone", "8 07:00-16:00", "5-1 07:00-16:00", "1 16:00-07:00", "1 07:00", "1 7-16", "closed tomorrow", "1",
        "closed 2027-01-01..2026-12-24", "closed 1900-01-01..2100-01-01", "2026-02-30 08:00-12:00", "monday 07:00-16:00", "1 25:00-26:00", "1 07:00-00:00"})
    void whatCannotBeUnderstoodIsToldByItsLine(String line) {
        String text = "# hours\nzone UTC\n" + line + "\n1-5 07:00-16:00\n";
        CalendarFormatException wrong = assertThrows(CalendarFormatException.class, () -> CalendarText.read(text));
        assertEquals(3, wrong.line());
        assertTrue(wrong.getMessage().contains("\"" + line + "\""), wrong.getMessage());
    }

    /** A night shift has its end on the day after: two lines, of which each tells something of Tuesday. */
    @Test
    void hoursOfADayMayStandInSeveralLines() {
        ShopCalendar nights = calendar("zone UTC\n1-5 22:00-24:00\n2-6 00:00-06:00\n2026-03-08 08:00-09:00\n2026-03-08 10:00-11:00\n");
        assertTrue(nights.isOpen(Instant.parse("2026-03-03T23:00:00Z")), "Tuesday evening");
        assertTrue(nights.isOpen(Instant.parse("2026-03-03T05:59:59Z")), "Tuesday morning");
        assertFalse(nights.isOpen(Instant.parse("2026-03-03T06:00:00Z")));
        assertFalse(nights.isOpen(Instant.parse("2026-03-02T05:00:00Z")), "Monday morning");
        assertTrue(nights.isOpen(Instant.parse("2026-03-08T08:30:00Z")));
        assertTrue(nights.isOpen(Instant.parse("2026-03-08T10:30:00Z")));
    }

    /** Whichever of two lines was meant, half of those who write them mean the other. */
    @ParameterizedTest
    @ValueSource(strings = {"5 07:00-14:00", "1-7 15:59-17:00", "1 00:00-24:00", "zone Europe/Paris", "closed 2026-03-07", "closed 2026-03-01..2026-03-31",
        "2026-03-07 11:00-13:00"})
    void linesThatContradictEachOtherAreNotGuessedAt(String line) {
        String before = "zone UTC\n1-5 07:00-16:00\n2026-03-07 08:00-12:00\n";
        CalendarFormatException wrong = assertThrows(CalendarFormatException.class, () -> CalendarText.read(before + line));
        assertEquals(4, wrong.line());
        assertEquals("\"" + line + "\" contradicts an earlier line. Leave one of the two out, or write hours that do not overlap.", wrong.getMessage());
    }

    @Test
    void zoneAndWeekAreNeeded() {
        assertTrue(assertThrows(CalendarFormatException.class, () -> CalendarText.read("1-5 07:00-16:00")).getMessage().contains("zone"));
        assertTrue(assertThrows(CalendarFormatException.class, () -> CalendarText.read("zone UTC\nclosed 2026-01-01")).getMessage().contains("weekday"));
    }

    // ---- laws

    private static ShopCalendar in(String zone, int opens, int hours) {
        int closes = Math.min(24, opens + hours);
        return calendar("zone " + zone + "\n1-5 " + String.format("%02d:00-%02d:00", opens, closes) + "\n");
    }

    private static Instant somewhen(int hours) {
        return Instant.parse("2026-01-01T00:00:00Z").plus(Duration.ofHours(hours));
    }

    /** What is said to be the next open instant is open, none before it is, and an open instant is its own. */
    @Property(tries = 400)
    boolean nextOpenIsTheFirst(@ForAll @IntRange(min = 0, max = 6) int zone, @ForAll @IntRange(min = 0, max = 20) int opens,
            @ForAll @IntRange(min = 1, max = 12) int hours, @ForAll @IntRange(min = 0, max = 9000) int when) {
        ShopCalendar calendar = in(ZONES.get(zone), opens, hours);
        Instant from = somewhen(when);
        Instant next = calendar.nextOpen(from).orElseThrow();
        boolean before = !next.equals(from) && (calendar.isOpen(from) || calendar.isOpen(next.minusMillis(1)));
        return calendar.isOpen(next) && !next.isBefore(from) && !before && calendar.nextOpen(next).equals(Optional.of(next));
    }

    /** A better start is later, within opening hours, and has fewer looks for which nobody is in; looks are never further apart than they may be. */
    @Property(tries = 60)
    boolean aBetterStartIsBetter(@ForAll @IntRange(min = 0, max = 6) int zone, @ForAll @IntRange(min = 6, max = 10) int opens,
            @ForAll @IntRange(min = 4, max = 12) int hours, @ForAll @IntRange(min = 0, max = 9000) int when, @ForAll @IntRange(min = 1, max = 96) int lasting,
            @ForAll @IntRange(min = 4, max = 30) int every) {
        ShopCalendar calendar = in(ZONES.get(zone), opens, hours);
        Rhythm rhythm = new Rhythm(Duration.ofHours(lasting), Duration.ofHours(every), Duration.ofMinutes(30));
        SoakTimes now = SoakTimes.of(calendar, somewhen(when), rhythm);
        Optional<SoakTimes> better = SoakTimes.better(calendar, somewhen(when), rhythm);
        boolean apart = true;
        Instant last = now.start();
        for (Instant look : now.looks()) {
            apart &= Duration.between(last, look).compareTo(rhythm.every()) <= 0;
            last = look;
        }
        boolean fine = better.map(there -> there.unattended().size() < now.unattended().size() && calendar.isOpen(there.start())
                && !there.start().isBefore(now.start())).orElse(true);
        return apart && last.equals(now.end()) && fine && now.looks().containsAll(now.unattended());
    }

    /** An unattended look is one that nobody is in for at any minute from when it is due to the end of the tolerance. */
    @Property(tries = 100)
    boolean unattendedMeansNobodyIsIn(@ForAll @IntRange(min = 0, max = 6) int zone, @ForAll @IntRange(min = 0, max = 9000) int when,
            @ForAll @IntRange(min = 0, max = 120) int tolerance) {
        ShopCalendar calendar = in(ZONES.get(zone), 7, 9);
        SoakTimes soak = SoakTimes.of(calendar, somewhen(when), new Rhythm(Duration.ofHours(72), Duration.ofHours(8), Duration.ofMinutes(tolerance)));
        for (Instant look : soak.looks()) {
            boolean anybody = false;
            for (int minute = 0; minute <= tolerance; minute++) {
                anybody |= calendar.isOpen(look.plus(Duration.ofMinutes(minute)));
            }
            if (anybody == soak.unattended().contains(look)) {
                return false;
            }
        }
        return true;
    }
}
