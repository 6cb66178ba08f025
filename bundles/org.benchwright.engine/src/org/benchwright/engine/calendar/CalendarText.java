package org.benchwright.engine.calendar;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.engine.internal.Words;

/**
 * The calendar of a shop as people write it, a line for each thing:
 *
 * <pre>
 * zone Europe/Paris
 * 1-4 07:00-12:00 12:30-16:30
 * 5 07:00-14:00
 * closed 2026-12-24..2027-01-01
 * 2026-03-07 08:00-12:00
 * </pre>
 *
 * Weekdays count from 1, Monday, to 7 (ISO 8601). What stands behind a {@code #} is a remark. Hours of one day may stand in several lines, such as
 * the two ends of a night shift; lines that contradict each other are no calendar.
 */
public final class CalendarText {

    private static final String END_OF_DAY = "24:00";
    private static final int MOST_CLOSED = 3660;

    private Optional<ZoneId> zone = Optional.empty();
    private final Map<DayOfWeek, List<Hours>> week = new EnumMap<>(DayOfWeek.class);
    private final Set<LocalDate> closed = new HashSet<>();
    private final Map<LocalDate, List<Hours>> other = new HashMap<>();
    private boolean contradicted;

    private CalendarText() {
    }

    /**
     * Reads it.
     *
     * @throws CalendarFormatException if it can't be understood, and which line
     */
    public static ShopCalendar read(String text) throws CalendarFormatException {
        CalendarText calendar = new CalendarText();
        String[] lines = text.split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].replaceAll("#.*", "").strip();
            if (!line.isEmpty()) {
                calendar.line(i + 1, line.split("\\s+"), line);
            }
        }
        if (calendar.zone.isEmpty()) {
            throw new CalendarFormatException(0, Words.of("calendar.noZone"));
        } else if (calendar.week.isEmpty()) {
            throw new CalendarFormatException(0, Words.of("calendar.noWeek"));
        }
        return new ShopCalendar(calendar.zone.get(), calendar.week, calendar.closed, calendar.other);
    }

    private void line(int number, String[] words, String line) throws CalendarFormatException {
        try {
            if (words[0].equals("zone") && words.length == 2) {
                contradicted |= zone.isPresent();
                zone = Optional.of(ZoneId.of(words[1]));
            } else if (words[0].equals("closed") && words.length == 2) {
                close(words[1]);
            } else if (words[0].matches("[1-7](-[1-7])?") && words.length > 1) {
                weekdays(words[0], hours(words));
            } else if (words[0].matches("[0-9]{4}-.*") && words.length > 1) {
                add(other, LocalDate.parse(words[0]), hours(words));
            } else {
                throw new CalendarFormatException(number, Words.of("calendar.line", line));
            }
            if (contradicted || other.keySet().stream().anyMatch(closed::contains)) {
                throw new CalendarFormatException(number, Words.of("calendar.contradicts", line));
            }
        } catch (DateTimeException | IllegalArgumentException wrong) {
            throw new CalendarFormatException(number, Words.of("calendar.line", line));
        }
    }

    private void weekdays(String days, List<Hours> hours) {
        int first = days.charAt(0) - '0';
        int last = days.charAt(days.length() - 1) - '0';
        require(first <= last);
        for (int day = first; day <= last; day++) {
            add(week, DayOfWeek.of(day), hours);
        }
    }

    /** Hours that lie beside those of earlier lines come to them; which of two that overlap is meant, nobody can tell. */
    private <D> void add(Map<D, List<Hours>> days, D day, List<Hours> hours) {
        List<Hours> before = days.getOrDefault(day, List.of());
        contradicted |= before.stream().anyMatch(one -> hours.stream().anyMatch(other -> overlap(one, other)));
        days.put(day, Stream.concat(before.stream(), hours.stream()).toList());
    }

    private static boolean overlap(Hours one, Hours other) {
        return begins(one, other) && begins(other, one);
    }

    /** Whether one begins before the other ends. */
    private static boolean begins(Hours one, Hours other) {
        return other.to().equals(LocalTime.MIDNIGHT) || one.from().isBefore(other.to());
    }

    private void close(String days) {
        String[] ends = days.split("\\.\\.", -1);
        require(ends.length <= 2);
        LocalDate first = LocalDate.parse(ends[0]);
        LocalDate last = LocalDate.parse(ends[ends.length - 1]);
        require(!last.isBefore(first) && last.isBefore(first.plusDays(MOST_CLOSED)));
        first.datesUntil(last.plusDays(1)).forEach(closed::add);
    }

    private static List<Hours> hours(String[] words) {
        List<Hours> hours = new ArrayList<>();
        for (int i = 1; i < words.length; i++) {
            String[] ends = words[i].split("-", -1);
            require(ends.length == 2);
            LocalTime to = ends[1].equals(END_OF_DAY) ? LocalTime.MIDNIGHT : LocalTime.parse(ends[1]);
            require(ends[1].equals(END_OF_DAY) || !to.equals(LocalTime.MIDNIGHT));
            hours.add(new Hours(LocalTime.parse(ends[0]), to));
        }
        return hours;
    }

    private static void require(boolean fine) {
        if (!fine) {
            throw new IllegalArgumentException();
        }
    }
}
