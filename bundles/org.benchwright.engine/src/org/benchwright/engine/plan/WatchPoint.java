package org.benchwright.engine.plan;

import java.math.BigDecimal;

import org.benchwright.core.PointAddress;
import org.benchwright.core.UnitOfMeasure;

/**
 * Something of a unit that a watch can read, and what it means.
 *
 * @param meaning what it tells
 * @param address where it is read
 */
public record WatchPoint(Meaning meaning, PointAddress address) {

    /** What a point tells. */
    public sealed interface Meaning {
    }

    /**
     * The unit is in a mode when the point reads that value, and in none of that point's kind otherwise.
     *
     * @param mode  the mode's name
     * @param value what it reads then; of a bit 1 is on and 0 is off
     */
    public record InMode(String mode, BigDecimal value) implements Meaning {
    }

    /**
     * A lamp is lit when the point reads that value.
     *
     * @param lamp  the lamp's name
     * @param value what it reads then
     */
    public record LampLit(String lamp, BigDecimal value) implements Meaning {
    }

    /**
     * The point reads a condition around the unit: {@code raw * scale + offset}, in that unit of measure.
     *
     * @param condition its name
     * @param scale     what one count is
     * @param offset    what zero counts are
     * @param unit      the unit of measure of both
     */
    public record Reads(String condition, BigDecimal scale, BigDecimal offset, UnitOfMeasure unit) implements Meaning {
    }
}
