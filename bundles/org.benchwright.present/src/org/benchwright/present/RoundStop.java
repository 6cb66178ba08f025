package org.benchwright.present;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A unit on soak that a round comes to.
 *
 * @param test     the test's id
 * @param serial   the unit's serial number
 * @param position where it stands in the rack; empty where nobody said so
 * @param due      when its next look is due
 * @param overdue  true if that was in the past
 * @param keeps    what it has to show
 * @param placeTells true if its position alone tells which unit it is; else it is scanned first
 */
public record RoundStop(String test, String serial, Optional<String> position, Instant due, boolean overdue, String keeps, boolean placeTells) {

    /** Positions in the order in which one walks along them: numbers in them count as numbers, and units without one come last. */
    private static final Comparator<RoundStop> ALONG = Comparator.comparing((RoundStop stop) -> stop.position().isEmpty())
            .thenComparing(stop -> key(stop.position().orElse(""))).thenComparing(RoundStop::serial);

    /** The stops of a round: all units on soak, position by position. */
    public static List<RoundStop> of(List<UnitRow> units) {
        return units.stream().filter(unit -> unit.nextLook().isPresent())
                .map(unit -> new RoundStop(unit.test(), unit.serial(), unit.position(), unit.nextLook().get(), unit.overdue(), unit.keeps(), alone(unit, units)))
                .sorted(ALONG).toList();
    }

    /** True if no other unit is said to stand where this one does. */
    private static boolean alone(UnitRow unit, List<UnitRow> units) {
        return unit.position().isPresent() && units.stream()
                .noneMatch(other -> !other.test().equals(unit.test()) && other.position().filter(unit.position().get()::equalsIgnoreCase).isPresent());
    }

    private static String key(String position) {
        StringBuilder key = new StringBuilder();
        StringBuilder digits = new StringBuilder();
        for (char c : (position + "\0").toCharArray()) {
            if (c >= '0' && c <= '9') {
                digits.append(c);
            } else {
                key.append("0".repeat(Math.max(0, digits.isEmpty() ? 0 : 20 - digits.length()))).append(digits).append(c);
                digits.setLength(0);
            }
        }
        return key.toString();
    }
}
