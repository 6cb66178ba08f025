package org.benchwright.present;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.internal.Hands;

/**
 * A look at a unit on soak of which somebody is to be reminded. Nothing is decided by it: a look that was missed is a departure by the rule of
 * the procedure, whoever was reminded.
 *
 * @param test     the test's id
 * @param serial   the unit's serial number
 * @param position where it stands in the rack; empty where nobody said so
 * @param kind     how near it is
 * @param due      when the look is due
 * @param by       when a look that was not taken becomes a departure
 */
public record LookReminder(String test, String serial, Optional<String> position, Kind kind, Instant due, Instant by) {

    /** A look is announced so long before it is due: time to walk to the rack. */
    public static final Duration AHEAD = Duration.ofMinutes(15);

    /** How near a look is, the most urgent first. */
    public enum Kind {
        /** The procedure's tolerance is over. */
        MISSED,
        /** It is due, and still in time. */
        DUE,
        /** It will be due soon. */
        COMING
    }

    /** The looks to be reminded of, the most urgent first. In a rehearsal, which skips waiting, there are none. */
    public static List<LookReminder> of(List<UnitRow> units, Instant now) {
        return units.stream().filter(unit -> !unit.rehearsal()).flatMap(unit -> of(unit, now).stream())
                .sorted(Comparator.comparing(LookReminder::kind).thenComparing(LookReminder::due).thenComparing(LookReminder::serial)).toList();
    }

    private static Optional<LookReminder> of(UnitRow unit, Instant now) {
        Optional<Instant> due = unit.nextLook().filter(at -> !at.minus(AHEAD).isAfter(now));
        return due.map(at -> {
            Instant by = unit.lookBy().orElse(at);
            Kind kind = now.isAfter(by) ? Kind.MISSED : now.isBefore(at) ? Kind.COMING : Kind.DUE;
            return new LookReminder(unit.test(), unit.serial(), unit.position(), kind, at, by);
        });
    }

    /** Where it is to be looked, and until when, in words. */
    public String words(Instant now, ZoneId zone) {
        String unit = position.map(at -> at + "  " + serial).orElse(serial);
        return switch (kind) {
            case COMING -> Hands.LOOK_COMING.text(unit, time(due, now, zone));
            case DUE -> Hands.LOOK_DUE.text(unit, time(due, now, zone), time(by, now, zone));
            case MISSED -> Hands.LOOK_MISSED.text(unit, time(due, now, zone), time(by, now, zone));
        };
    }

    /** How many looks were missed, are due and are coming, in one line; empty where none is. */
    public static Optional<String> summary(List<LookReminder> looks) {
        return looks.isEmpty() ? Optional.empty()
                : Optional.of(Hands.LOOKS.text(count(looks, Kind.MISSED), count(looks, Kind.DUE), count(looks, Kind.COMING)).strip());
    }

    private static long count(List<LookReminder> looks, Kind kind) {
        return looks.stream().filter(look -> look.kind() == kind).count();
    }

    private static String time(Instant instant, Instant now, ZoneId zone) {
        return new WallTime(zone).near(instant, now);
    }
}
