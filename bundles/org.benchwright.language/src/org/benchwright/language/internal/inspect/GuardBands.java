package org.benchwright.language.internal.inspect;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.language.RemarkCode;
import org.benchwright.model.Decision;
import org.benchwright.model.DecisionRule;
import org.benchwright.model.Derive;
import org.benchwright.model.Instrument;
import org.benchwright.model.Measurement;
import org.benchwright.model.Procedures;
import org.benchwright.model.Value;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;

/** Whether a guarded decision knows the uncertainty that it guards against, and leaves something to accept. */
final class GuardBands {

    private final Remarks remarks;

    GuardBands(Remarks remarks) {
        this.remarks = remarks;
    }

    static boolean isGuarded(Decision decision) {
        return decision.getRule() != DecisionRule.SIMPLE;
    }

    /**
     * Looks at limits with a guard band of the whole expanded uncertainty on each side (ILAC-G8:09/2019, 4.2): something must be left between.
     *
     * @param written    the limits
     * @param instrument what the value is read with
     * @param at         what says so
     * @param part       where it says so
     */
    void look(org.benchwright.model.Limits written, Instrument instrument, EObject at, EStructuralFeature part) {
        if (instrument.getUncertainty() == null) {
            remarks.on(at, part, RemarkCode.UNCERTAINTY_NOT_SAID, instrument.getName());
        }
        Optional<Quantity> uncertainty = Written.quantity(instrument.getUncertainty());
        Optional<Limits> limits = Written.limits(written);
        boolean meet = uncertainty.flatMap(most -> limits.flatMap(sides -> Written.sound(() -> Optional.of(meet(sides, most))))).orElse(false);
        if (meet) {
            remarks.on(written, RemarkCode.GUARD_BANDS_MEET, instrument.getName());
        }
    }

    /** Where they just touch, one single value would be accepted, and no instrument shows it twice. */
    private static boolean meet(Limits limits, Quantity uncertainty) {
        if (limits.lower().isEmpty() || limits.upper().isEmpty()) {
            return false;
        }
        Quantity left = limits.upper().get().minus(limits.lower().get()).minus(uncertainty).minus(uncertainty);
        return left.value().signum() <= 0;
    }

    /** Looks at every instrument that a guarded value is derived from. */
    void look(Derive derive) {
        if (isGuarded(derive)) {
            Procedures.references(derive).forEach(reference -> unknown(reference.getValue(), new HashSet<>())
                    .ifPresent(instrument -> remarks.on(reference, RemarkCode.UNCERTAINTY_NOT_SAID, instrument.getName())));
        }
    }

    /** An instrument behind a value, in other derived values too, of which no uncertainty is said. */
    private static Optional<Instrument> unknown(Value value, Set<Value> seen) {
        Optional<Value> known = Written.thing(value).filter(seen::add);
        if (known.isPresent() && value instanceof Measurement measurement) {
            return Written.thing(measurement.getInstrument()).filter(instrument -> instrument.getUncertainty() == null);
        }
        return known.filter(Derive.class::isInstance).map(Derive.class::cast).stream().flatMap(derive -> Procedures.references(derive).stream())
                .flatMap(reference -> unknown(reference.getValue(), seen).stream()).findFirst();
    }
}
