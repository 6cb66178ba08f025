package org.benchwright.engine.internal;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Expression;

/**
 * Readings that look like a slip of the decimal point: outside the limits, and inside if the point is moved by up to three places; or so far
 * from the earlier readings of the same check, and beside them if it is moved.
 */
public final class Slips {

    /** By how many places the point is moved, the nearest first. */
    private static final List<Integer> PLACES = List.of(-1, 1, -2, 2, -3, 3);
    /** Readings of one thing differ by less than this part of them. */
    private static final BigDecimal BESIDE = new BigDecimal("0.1");

    private Slips() {
    }

    /** What a reading that answers this demand should be asked about; empty if nothing is odd about it. */
    public static Optional<Fact.Questioned> in(Demand demand, Fact fact) {
        if (demand instanceof Demand.TakeMeasurement && fact instanceof Observation.Measured m) {
            return instead(demand, m.value()).map(instead -> new Fact.Questioned(m.check(), m.raw(), m.value(), instead));
        } else if (demand instanceof Demand.ReadCell && fact instanceof Observation.CellRead c) {
            return instead(demand, c.value()).map(instead -> new Fact.Questioned(c.check(), c.raw(), c.value(), instead));
        }
        return Optional.empty();
    }

    /** What a reading may have been meant for. */
    static Optional<Quantity> instead(Demand demand, Quantity value) {
        if (demand instanceof Demand.TakeMeasurement m) {
            return instead(value, bounded(m.measure().limits()), m.earlier());
        }
        Demand.ReadCell cell = (Demand.ReadCell) demand;
        boolean itself = cell.grid().judged() instanceof Expression.Name name && name.name().equals(cell.grid().reading());
        return itself ? instead(value, bounded(cell.grid().limits()), List.of()) : insteadInCell(cell, value);
    }

    /** Where something is reckoned from the reading, that tells. Where nothing read would be inside, everything is, moved far enough. */
    private static Optional<Quantity> insteadInCell(Demand.ReadCell cell, Quantity value) {
        boolean sound = value.value().signum() == 0 || value.unit().hasOffset() || bounded(cell.grid().limits()).isEmpty() || inside(cell, value)
                || inside(cell, new Quantity(BigDecimal.ZERO, value.unit()));
        return sound ? Optional.empty() : PLACES.stream().flatMap(places -> moved(value, places)).filter(other -> inside(cell, other)).findFirst();
    }

    private static boolean inside(Demand.ReadCell cell, Quantity value) {
        try {
            return cell.grid().limits().contains(Cells.judged(cell.grid(), cell.cell(), value));
        } catch (ArithmeticException | IllegalArgumentException notReckoned) {
            return false;
        }
    }

    /** A limit on one side alone tells nothing: moved far enough, every value is inside. */
    private static Optional<Limits> bounded(Limits limits) {
        return Optional.of(limits).filter(l -> l.lower().isPresent() && l.upper().isPresent());
    }

    private static Optional<Quantity> instead(Quantity value, Optional<Limits> limits, List<Quantity> earlier) {
        UnitOfMeasure unit = limits.map(Limits::unit).or(() -> earlier.stream().findFirst().map(Quantity::unit)).orElse(value.unit());
        boolean sound = value.value().signum() == 0 || unit.hasOffset() || value.unit().hasOffset() || !unit.sameDimension(value.unit())
                || limits.filter(l -> l.contains(value)).isPresent();
        return sound ? Optional.empty() : PLACES.stream().flatMap(places -> moved(value, places))
                .filter(other -> limits.filter(l -> l.contains(other)).isPresent() || limits.isEmpty() && beside(other, earlier)).findFirst();
    }

    private static Stream<Quantity> moved(Quantity value, int places) {
        return Stream.of(new Quantity(value.value().movePointRight(places), value.unit()));
    }

    private static boolean beside(Quantity value, List<Quantity> earlier) {
        return !earlier.isEmpty() && earlier.stream().allMatch(each -> {
            BigDecimal then = each.exactIn(value.unit());
            return value.value().subtract(then).abs().compareTo(then.abs().multiply(BESIDE)) <= 0;
        });
    }
}
