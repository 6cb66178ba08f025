package org.benchwright.language.internal.compile;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.model.Amount;

/** Amounts and limits as written, as quantities. */
final class Amounts {

    private static final UnitOfMeasure SECOND = UnitOfMeasure.of("s");
    private static final UnitOfMeasure PERCENT = UnitOfMeasure.of("%");

    private Amounts() {
    }

    static Quantity quantity(Amount amount) {
        return new Quantity(amount.getValue(), UnitOfMeasure.of(amount.getUnit()));
    }

    static Duration duration(Amount amount) {
        return Duration.ofNanos(quantity(amount).exactIn(SECOND).movePointRight(9).longValueExact());
    }

    static Optional<Duration> optionalDuration(Amount amount) {
        return Optional.ofNullable(amount).map(Amounts::duration);
    }

    /** A share such as 90 % as a number from 0 to 1. */
    static BigDecimal share(Amount amount) {
        return quantity(amount).exactIn(PERCENT).movePointLeft(2);
    }

    static Limits limits(org.benchwright.model.Limits written) {
        UnitOfMeasure unit = UnitOfMeasure.of(written.getUnit());
        if (written.getNominal() != null) {
            return around(new Quantity(written.getNominal(), unit), written.getTolerance());
        }
        Optional<Quantity> upper = Optional.ofNullable(written.getUpper()).map(u -> new Quantity(u, unit));
        UnitOfMeasure lowerUnit = written.getLowerUnit() == null ? unit : UnitOfMeasure.of(written.getLowerUnit());
        Optional<Quantity> lower = Optional.ofNullable(written.getLower()).map(l -> new Quantity(l, lowerUnit));
        return new Limits(lower, upper);
    }

    /** Limits around a nominal value; the tolerance is written in % of it, or in a unit of its own. */
    static Limits around(Quantity nominal, org.benchwright.model.Limits tolerance) {
        Limits distance = limits(tolerance);
        if (distance.unit().equals(PERCENT)) {
            return Limits.around(nominal, distance.lower().orElseThrow().value().abs(), distance.upper().orElseThrow().value());
        }
        return Limits.between(nominal.plus(distance.lower().orElseThrow()), nominal.plus(distance.upper().orElseThrow()));
    }
}
