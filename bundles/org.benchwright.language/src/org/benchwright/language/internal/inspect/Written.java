package org.benchwright.language.internal.inspect;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.model.Amount;
import org.benchwright.model.Limits;
import org.benchwright.model.Procedures;
import org.benchwright.model.Step;
import org.benchwright.model.Wait;
import org.eclipse.emf.ecore.EObject;

/** What is written, as values: nothing where it is missing or makes no sense, which is remarked on elsewhere. */
public final class Written {

    private static final UnitOfMeasure SECOND = UnitOfMeasure.of("s");
    private static final UnitOfMeasure PERCENT = UnitOfMeasure.of("%");

    private Written() {
    }

    /** A thing that is there and that a name really led to. */
    static <T extends EObject> Optional<T> thing(T thing) {
        return thing == null || thing.eIsProxy() ? Optional.empty() : Optional.of(thing);
    }

    /** Those of a list that names really led to. */
    static <T extends EObject> List<T> things(List<T> things) {
        return things.stream().filter(thing -> thing(thing).isPresent()).toList();
    }

    static Optional<UnitOfMeasure> unit(String word) {
        return Optional.ofNullable(word).flatMap(UnitOfMeasure::find);
    }

    static Optional<Quantity> quantity(BigDecimal number, String unitWord) {
        return Optional.ofNullable(number).flatMap(value -> unit(unitWord).map(unit -> new Quantity(value, unit)));
    }

    static Optional<Quantity> quantity(Amount amount) {
        return Optional.ofNullable(amount).flatMap(written -> quantity(written.getValue(), written.getUnit()));
    }

    /** The seconds of an amount that is a time. */
    public static Optional<BigDecimal> seconds(Amount amount) {
        return quantity(amount).filter(time -> time.unit().sameDimension(SECOND)).map(time -> time.to(SECOND).value());
    }

    /** A time that a procedure can have. */
    static Optional<Duration> duration(Amount amount) {
        return seconds(amount).filter(Times::inRange).map(time -> Duration.ofMillis(time.movePointRight(3).longValue()));
    }

    /** How long a step takes: as long as it says, and no less than what is waited in it. */
    public static Duration duration(Step step) {
        Duration takes = duration(step.getTakes()).orElse(Duration.ZERO);
        Duration waits = Procedures.statements(step, Wait.class).flatMap(wait -> duration(wait.getTime()).stream())
                .reduce(Duration.ZERO, Duration::plus);
        return takes.compareTo(waits) >= 0 ? takes : waits;
    }

    /** A share from 0 to 1. */
    public static Optional<Double> share(Amount amount) {
        return quantity(amount).filter(share -> share.unit().sameDimension(PERCENT)).map(share -> share.in(PERCENT) / 100);
    }

    /** Limits of one dimension, the right way round. */
    static Optional<org.benchwright.core.Limits> limits(Limits limits) {
        if (limits == null) {
            return Optional.empty();
        }
        return sound(() -> limits.getNominal() == null ? sides(limits) : around(limits)).filter(sides -> !sides.inverted());
    }

    private static Optional<org.benchwright.core.Limits> sides(Limits limits) {
        String lowerUnit = limits.getLowerUnit() == null ? limits.getUnit() : limits.getLowerUnit();
        Optional<Quantity> lower = quantity(limits.getLower(), lowerUnit);
        Optional<Quantity> upper = quantity(limits.getUpper(), limits.getUnit());
        boolean complete = lower.isPresent() == (limits.getLower() != null) && upper.isPresent() == (limits.getUpper() != null);
        return complete && (lower.isPresent() || upper.isPresent()) ? Optional.of(new org.benchwright.core.Limits(lower, upper))
                : Optional.empty();
    }

    private static Optional<org.benchwright.core.Limits> around(Limits limits) {
        Optional<Quantity> nominal = quantity(limits.getNominal(), limits.getUnit());
        Optional<org.benchwright.core.Limits> tolerance = limits(limits.getTolerance());
        return nominal.flatMap(value -> tolerance.map(distance -> around(value, distance)));
    }

    private static org.benchwright.core.Limits around(Quantity nominal, org.benchwright.core.Limits distance) {
        Quantity below = distance.lower().orElseThrow();
        Quantity above = distance.upper().orElseThrow();
        return distance.unit().equals(PERCENT)
                ? org.benchwright.core.Limits.around(nominal, below.value().negate(), above.value())
                : org.benchwright.core.Limits.between(nominal.plus(below), nominal.plus(above));
    }

    /** What a calculation gives; nothing where the units don't allow it. */
    static <T> Optional<T> sound(Supplier<Optional<T>> calculation) {
        try {
            return calculation.get();
        } catch (IllegalArgumentException | ArithmeticException mismatch) {
            // Dimensions that differ or percentages of a temperature: the inspection of amounts names them.
            return Optional.empty();
        }
    }
}
