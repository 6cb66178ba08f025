package org.benchwright.language.internal.inspect;

import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.model.Instrument;

/** What an instrument can read or give, as far as the procedure says. {@code up to 60 V} means from -60 V to 60 V. */
record InstrumentRange(Optional<Limits> range) {

    static InstrumentRange of(Instrument instrument) {
        Optional<Limits> upTo = Written.quantity(instrument.getUpTo()).filter(most -> !most.unit().hasOffset() && most.value().signum() >= 0)
                .map(most -> Limits.between(most.negate(), most));
        return new InstrumentRange(upTo.or(() -> Written.limits(instrument.getRange())));
    }

    /** Whether a value lies within; true where nothing is said or the dimensions differ. */
    boolean holds(Quantity value) {
        return holds(Limits.between(value, value));
    }

    /** Whether both sides of limits lie within; true where nothing is said or the dimensions differ. */
    boolean holds(Limits limits) {
        return range.flatMap(means -> Written.sound(() -> Optional.of(holds(means, limits.lower()) && holds(means, limits.upper()))))
                .orElse(true);
    }

    private static boolean holds(Limits means, Optional<Quantity> side) {
        return side.map(means::contains).orElse(true);
    }
}
