package org.benchwright.language.internal.proof;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.WorkStage;

/**
 * The largest uncertainty of a derived value, combined as the engine does: terms that one instrument has read are added up, those of
 * different ones by the root of the sum of squares (JCGM 100:2008, 5.1.2 and 5.2.2).
 */
final class DerivedUncertainty {

    private final Plan plan;

    DerivedUncertainty(Plan plan) {
        this.plan = plan;
    }

    /** At the usual coverage factor; empty where an instrument behind it may be of any uncertainty. */
    Optional<Quantity> expanded(Action.Derive derive) {
        UnitOfMeasure unit = derive.limits().unit().forDifferences();
        Map<String, BigDecimal> byInstrument = new TreeMap<>();
        for (Action.Measure term : terms(derive.value())) {
            Optional<Quantity> one = plan.instrument(term.instrument()).flatMap(DerivedUncertainty::atUsualCoverage);
            if (one.isEmpty()) {
                return Optional.empty();
            }
            byInstrument.merge(term.instrument(), one.get().to(unit).value(), BigDecimal::add);
        }
        BigDecimal squares = byInstrument.values().stream().map(each -> each.multiply(each)).reduce(BigDecimal.ZERO, BigDecimal::add);
        return Optional.of(new Quantity(squares.sqrt(MathContext.DECIMAL64).stripTrailingZeros(), unit));
    }

    private static Optional<Quantity> atUsualCoverage(InstrumentSpec spec) {
        return spec.maxUncertainty().filter(most -> spec.coverage().signum() > 0)
                .map(most -> new Quantity(most.value().multiply(InstrumentSpec.USUAL_COVERAGE)
                        .divide(spec.coverage(), MathContext.DECIMAL64), most.unit()));
    }

    /** The measurements behind it, one entry for each time that one is used. */
    private List<Action.Measure> terms(Expression value) {
        List<Action.Measure> terms = new ArrayList<>();
        if (value instanceof Expression.Sum sum) {
            terms.addAll(terms(sum.left()));
            terms.addAll(terms(sum.right()));
        } else if (value instanceof Expression.Difference difference) {
            terms.addAll(terms(difference.left()));
            terms.addAll(terms(difference.right()));
        } else if (value instanceof Expression.Name name) {
            action(name.name()).ifPresent(action -> {
                if (action instanceof Action.Measure measure) {
                    terms.add(measure);
                } else if (action instanceof Action.Derive earlier) {
                    terms.addAll(terms(earlier.value()));
                }
            });
        }
        return terms;
    }

    private Optional<Action> action(String key) {
        int dot = key.indexOf('.');
        return Stream.concat(plan.stages().stream(), Stream.of(plan.makeSafe())).filter(WorkStage.class::isInstance)
                .flatMap(stage -> ((WorkStage) stage).steps().stream()).filter(step -> step.name().equals(key.substring(0, Math.max(dot, 0))))
                .flatMap(step -> step.actions().stream()).filter(each -> each.id().equals(key.substring(dot + 1))).findFirst();
    }
}
