package org.benchwright.engine.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.evidence.ConformityDecision;

/**
 * Values reckoned from measurements. Their uncertainty: terms read with one instrument share its error and are added up as they are,
 * the worst that can be; what different instruments contribute is independent and combined by the root of the sum of squares
 * (JCGM 100:2008, 5.1.2 and 5.2.2).
 */
final class DerivedValues {

    private DerivedValues() {
    }

    /** Under which key a value of the open step is kept. */
    static String key(RunState s, String id) {
        return s.stepName() + "." + id;
    }

    static void decide(RunState s, Action.Derive derive) {
        Quantity value;
        try {
            value = derive.value().value(s.memory().values());
        } catch (IllegalArgumentException missing) {
            // A way led here past a measurement: nobody can tell.
            String words = Words.of("derive.missing", derive.id());
            Checks.decide(s, derive.id(), Outcome.UNDECIDED, Optional.empty(), words);
            Moves.take(s, derive.undecided(), derive.id(), words, Outcome.UNDECIDED);
            return;
        }
        s.memory().values().put(key(s, derive.id()), value);
        Readings.Uncertainty u = new Readings.Uncertainty(expanded(s, derive), InstrumentSpec.USUAL_COVERAGE);
        Readings.Combined result = new Readings.Combined(
                ConformityDecision.decide(value, derive.limits(), u.expanded(), u.coverage(), derive.rule()));
        Checks.decide(s, derive.id(), result.outcome(), Optional.of(result.numbers()), result.words());
        switch (result.outcome()) {
            case CONFORMS, RELEASED -> Steps.next(s);
            case DOES_NOT_CONFORM -> Moves.take(s, derive.rejected(), derive.id(), result.words(), result.outcome());
            case UNDECIDED -> Moves.take(s, derive.undecided(), derive.id(), result.words(), result.outcome());
        }
    }

    private static Quantity expanded(RunState s, Action.Derive derive) {
        UnitOfMeasure unit = derive.limits().unit().forDifferences();
        Map<String, BigDecimal> byInstrument = new TreeMap<>();
        for (String key : measured(s, derive.value())) {
            measurement(s, key).ifPresent(m -> byInstrument.merge(m.instrument(),
                    Readings.uncertainty(s, Optional.of(m.instrument()), m.limits(), InstrumentSpec.USUAL_COVERAGE).expanded().to(unit).value(), BigDecimal::add));
        }
        BigDecimal squares = byInstrument.values().stream().map(u -> u.multiply(u)).reduce(BigDecimal.ZERO, BigDecimal::add);
        return new Quantity(squares.sqrt(MathContext.DECIMAL64), unit);
    }

    /** The measurements behind an expression, one entry for each time that one is used. */
    private static List<String> measured(RunState s, Expression value) {
        List<String> keys = new ArrayList<>();
        for (String name : names(value)) {
            Optional<Action.Derive> earlier = action(s, name).filter(Action.Derive.class::isInstance).map(Action.Derive.class::cast);
            if (earlier.isPresent()) {
                keys.addAll(measured(s, earlier.get().value()));
            } else {
                keys.add(name);
            }
        }
        return keys;
    }

    static List<String> names(Expression value) {
        List<String> names = new ArrayList<>();
        if (value instanceof Expression.Name n) {
            names.add(n.name());
        } else if (value instanceof Expression.Sum sum) {
            names.addAll(names(sum.left()));
            names.addAll(names(sum.right()));
        } else if (value instanceof Expression.Difference d) {
            names.addAll(names(d.left()));
            names.addAll(names(d.right()));
        }
        return names;
    }

    private static Optional<Action.Measure> measurement(RunState s, String key) {
        return action(s, key).filter(Action.Measure.class::isInstance).map(Action.Measure.class::cast);
    }

    private static Optional<Action> action(RunState s, String key) {
        int dot = key.indexOf('.');
        return s.plan().steps().filter(step -> step.name().equals(key.substring(0, Math.max(dot, 0))))
                .flatMap(step -> step.actions().stream()).filter(a -> a.id().equals(key.substring(dot + 1))).findFirst();
    }
}
