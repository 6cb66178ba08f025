package org.benchwright.engine;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.RepeatRisk;

/**
 * A value that was decided on, with what its plan says about the decision: what is needed to reckon how sure that decision is.
 *
 * @param value       the value decided on
 * @param limits      where it must lie
 * @param uncertainty expanded uncertainty used
 * @param coverage    the factor that it is meant at
 * @param rule        the decision rule
 * @param taken       how the plan has the readings for it taken
 */
public record JudgedValue(Quantity value, Limits limits, Quantity uncertainty, BigDecimal coverage, DecisionRule rule,
        RepeatRisk.Taken taken) {

    /**
     * The value behind a decision.
     *
     * @param step     the step in which it was made
     * @param decision the decision as it is on record
     * @return nothing where no number was decided on, or the plan knows no such check
     */
    public static Optional<JudgedValue> of(Plan plan, String step, Derived.CheckDecided decision) {
        return decision.numbers().flatMap(numbers -> actions(plan, step).filter(action -> action.id().equals(decision.check()))
                .findFirst().flatMap(action -> of(plan, action, numbers)));
    }

    private static Stream<Action> actions(Plan plan, String step) {
        return plan.steps().filter(each -> each.name().equals(step)).flatMap(each -> each.actions().stream());
    }

    private static Optional<JudgedValue> of(Plan plan, Action action, Derived.Numbers numbers) {
        if (action instanceof Action.Measure m) {
            return judged(numbers, m.limits(), coverage(plan, Optional.of(m.instrument())), m.rule(), m.taken());
        } else if (action instanceof Action.Grid g) {
            return judged(numbers, g.limits(), coverage(plan, g.instrument()), g.rule(), RepeatRisk.Taken.ONCE);
        } else if (action instanceof Action.Derive d) {
            return judged(numbers, d.limits(), InstrumentSpec.USUAL_COVERAGE, d.rule(), RepeatRisk.Taken.ONCE);
        }
        return Optional.empty();
    }

    private static BigDecimal coverage(Plan plan, Optional<String> instrument) {
        return instrument.flatMap(plan::instrument).map(InstrumentSpec::coverage).orElse(InstrumentSpec.USUAL_COVERAGE);
    }

    private static Optional<JudgedValue> judged(Derived.Numbers numbers, Limits limits, BigDecimal coverage, DecisionRule rule,
            RepeatRisk.Taken taken) {
        try {
            return Optional.of(new JudgedValue(Quantity.parse(numbers.value()), limits, Quantity.parse(numbers.uncertainty()), coverage,
                    rule, taken));
        } catch (QuantityFormatException e) {
            throw new IllegalArgumentException("a derived event holds quantities: " + numbers, e);
        }
    }
}
