package org.benchwright.engine.calendar;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * When somebody is in the shop. Hours are by its wall clock: where that is put forward or back in the night, an hour more or less lies between two
 * days, and a look that was due at eight is due at nine or seven.
 *
 * @param zone   the shop's time zone
 * @param week   opening hours by weekday; a weekday that is missing is closed
 * @param closed days on which nobody is in, whatever the week says
 * @param other  days with hours of their own
 */
public record ShopCalendar(ZoneId zone, Map<DayOfWeek, List<Hours>> week, Set<LocalDate> closed, Map<LocalDate, List<Hours>> other) {

    /** Nobody looks further ahead than this. */
    private static final int MOST_DAYS = 400;

    public ShopCalendar {
        week = week.entrySet().stream().collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, entry -> List.copyOf(entry.getValue())));
        closed = Set.copyOf(closed);
        other = other.entrySet().stream().collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, entry -> List.copyOf(entry.getValue())));
    }

    /** The times of a day in which somebody is in, in order. */
    public List<OpenTime> on(LocalDate day) {
        if (closed.contains(day)) {
            return List.of();
        }
        List<Hours> hours = other.containsKey(day) ? other.get(day) : week.getOrDefault(day.getDayOfWeek(), List.of());
        return hours.stream().flatMap(each -> open(day, each).stream()).sorted(Comparator.comparing(OpenTime::from)).toList();
    }

    /** Opening hours that the clock jumps over are none; a closing time that comes twice is the later one. */
    private Optional<OpenTime> open(LocalDate day, Hours hours) {
        Instant from = ZonedDateTime.of(day, hours.from(), zone).toInstant();
        LocalDate lastDay = hours.to().equals(LocalTime.MIDNIGHT) ? day.plusDays(1) : day;
        Instant to = ZonedDateTime.of(lastDay, hours.to(), zone).withLaterOffsetAtOverlap().toInstant();
        return from.isBefore(to) ? Optional.of(new OpenTime(from, to)) : Optional.empty();
    }

    /** Whether somebody is in at that instant. */
    public boolean isOpen(Instant instant) {
        LocalDate day = instant.atZone(zone).toLocalDate();
        // By a clock that is put back at midnight, the end of a day may lie in the next.
        return on(day).stream().anyMatch(open -> open.holds(instant)) || on(day.minusDays(1)).stream().anyMatch(open -> open.holds(instant));
    }

    /** The first instant from then on at which somebody is in; empty if nobody is for more than a year. */
    public Optional<Instant> nextOpen(Instant from) {
        LocalDate day = from.atZone(zone).toLocalDate().minusDays(1);
        for (int i = 0; i <= MOST_DAYS; i++) {
            Optional<Instant> first = on(day.plusDays(i)).stream().filter(open -> open.to().isAfter(from))
                    .map(open -> open.from().isAfter(from) ? open.from() : from).min(Comparator.naturalOrder());
            if (first.isPresent()) {
                return first;
            }
        }
        return Optional.empty();
    }

    /** Whether somebody is in at some instant from {@code from} to {@code to}, both counted. */
    public boolean isOpenWithin(Instant from, Instant to) {
        return nextOpen(from).filter(open -> !open.isAfter(to)).isPresent();
    }
}
