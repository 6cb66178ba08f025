package org.benchwright.engine.instrument;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.engine.internal.RegisterRules;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;

/** What the ranges of an instrument come to in a procedure. */
public final class RegisteredUncertainty {

    private RegisteredUncertainty() {
    }

    /**
     * The expanded uncertainty with which a test names an instrument: the largest at any value that the procedure needs it for, with the
     * coverage factor that the procedure speaks of. A reading is decided with the uncertainty at the reading itself.
     *
     * @param ranges what the instrument can do
     * @return empty if the procedure needs no value of it, or it has no range for one
     */
    public static Optional<Quantity> of(Plan plan, InstrumentSpec spec, List<InstrumentRange> ranges) {
        return RegisterRules.uncertainty(plan, spec, RegisterRules.fitting(spec, ranges));
    }
}
