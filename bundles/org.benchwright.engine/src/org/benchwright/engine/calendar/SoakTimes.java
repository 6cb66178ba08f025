package org.benchwright.engine.calendar;

import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * When the looks of a soak are due if each is taken when it is due, and which of them nobody is in for.
 *
 * @param start      when it begins
 * @param end        when it has lasted as long as it has to
 * @param looks      when looks are due, the last one at the end
 * @param unattended those for which nobody is in, neither when they are due nor within the tolerance behind that
 */
public record SoakTimes(Instant start, Instant end, List<Instant> looks, List<Instant> unattended) {

    private static final int HORIZON_DAYS = 14;
    private static final int STEP_MINUTES = 15;
    private static final int MOST_LOOKS = 10_000;

    public SoakTimes {
        looks = List.copyOf(looks);
        unattended = List.copyOf(unattended);
    }

    /**
     * What a soak is like.
     *
     * @param lasting   how long it lasts, above zero
     * @param every     from one look to the next at most, above zero
     * @param tolerance a look that is later by no more than this is in time
     */
    public record Rhythm(Duration lasting, Duration every, Duration tolerance) {
        public Rhythm {
            if (lasting.compareTo(Duration.ZERO) <= 0 || every.compareTo(Duration.ZERO) <= 0 || tolerance.isNegative()) {
                throw new IllegalArgumentException("a soak lasts, and is looked at now and then: " + lasting + ", " + every + ", " + tolerance);
            }
        }
    }

    /** The looks of a soak that begins then. */
    public static SoakTimes of(ShopCalendar calendar, Instant start, Rhythm rhythm) {
        Instant end = start.plus(rhythm.lasting());
        List<Instant> looks = new ArrayList<>();
        for (Instant due = start.plus(rhythm.every()); due.isBefore(end) && looks.size() < MOST_LOOKS; due = due.plus(rhythm.every())) {
            looks.add(due);
        }
        looks.add(end);
        return new SoakTimes(start, end, looks, looks.stream().filter(due -> !calendar.isOpenWithin(due, due.plus(rhythm.tolerance()))).toList());
    }

    /**
     * A later start, at a quarter of an hour within opening hours of the next two weeks, for which somebody is in at every look; where there is
     * none, one with the fewest looks that nobody is in for. Empty if beginning now is as good.
     */
    public static Optional<SoakTimes> better(ShopCalendar calendar, Instant now, Rhythm rhythm) {
        SoakTimes best = of(calendar, now, rhythm);
        boolean found = false;
        Instant last = now.plus(Duration.ofDays(HORIZON_DAYS));
        Optional<Instant> candidate = calendar.nextOpen(quarter(calendar, now));
        while (!best.unattended().isEmpty() && candidate.filter(start -> !start.isAfter(last)).isPresent()) {
            SoakTimes there = of(calendar, candidate.get(), rhythm);
            if (there.unattended().size() < best.unattended().size()) {
                best = there;
                found = true;
            }
            candidate = calendar.nextOpen(quarter(calendar, candidate.get().plusSeconds(1)));
        }
        return found ? Optional.of(best) : Optional.empty();
    }

    /** The next quarter of an hour on the shop's clock. */
    private static Instant quarter(ShopCalendar calendar, Instant from) {
        ZonedDateTime minute = from.atZone(calendar.zone()).truncatedTo(ChronoUnit.MINUTES);
        ZonedDateTime whole = minute.toInstant().equals(from) ? minute : minute.plusMinutes(1);
        int over = whole.getMinute() % STEP_MINUTES;
        return (over == 0 ? whole : whole.plusMinutes(STEP_MINUTES - over)).toInstant();
    }
}
