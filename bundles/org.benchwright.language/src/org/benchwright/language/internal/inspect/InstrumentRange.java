package org.benchwright.language.internal.inspect;

import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.model.Instrument;

/**
 * What an instrument can read or give, as far as the procedure says. {@code up to 60 V} means from -60 V to 60 V; on a scale whose zero is not
 * nothing it is an end on one side.
 */
record InstrumentRange(Optional<Limits> range) {

    static InstrumentRange of(Instrument instrument) {
        Optional<Limits> upTo = Written.quantity(instrument.getUpTo())
                .map(most -> most.unit().hasOffset() ? Limits.atMost(most) : Limits.between(most.negate(), most)).filter(range -> !range.inverted());
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
