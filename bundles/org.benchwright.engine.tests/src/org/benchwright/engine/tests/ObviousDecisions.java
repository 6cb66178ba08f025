package org.benchwright.engine.tests;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

import org.benchwright.core.Limits;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.plan.Action;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;

/** The decision rules in their simplest form, for limits on both sides and everything in one unit. */
final class ObviousDecisions {

    private ObviousDecisions() {
    }

    static Outcome of(BigDecimal value, Limits limits, BigDecimal uncertainty, DecisionRule rule) {
        BigDecimal margin = margin(value, limits);
        boolean inside = margin.signum() >= 0;
        boolean clearlyInside = margin.compareTo(uncertainty) >= 0;
        boolean clearlyOutside = margin.compareTo(uncertainty.negate()) < 0;
        return switch (rule) {
            case SIMPLE -> inside ? Outcome.CONFORMS : Outcome.DOES_NOT_CONFORM;
            case GUARDED -> clearlyInside ? Outcome.CONFORMS : Outcome.DOES_NOT_CONFORM;
            case GUARDED_BOTH_WAYS -> clearlyInside ? Outcome.CONFORMS : clearlyOutside ? Outcome.DOES_NOT_CONFORM : Outcome.UNDECIDED;
        };
    }

    static BigDecimal margin(BigDecimal value, Limits limits) {
        BigDecimal aboveLower = value.subtract(limits.lower().orElseThrow().value());
        BigDecimal belowUpper = limits.upper().orElseThrow().value().subtract(value);
        return aboveLower.min(belowUpper);
    }

    /** The value that several readings come to. */
    static BigDecimal valueOfAll(List<BigDecimal> readings, Action.Measure m) {
        if (readings.size() > 1 && m.again().map(Action.Again::combine).orElse(Combination.LAST) == Combination.MEAN) {
            return readings.stream().reduce(BigDecimal.ZERO, BigDecimal::add).divide(BigDecimal.valueOf(readings.size()), MathContext.DECIMAL128);
        }
        return readings.get(readings.size() - 1);
    }

    static Outcome ofAll(List<BigDecimal> readings, Action.Measure m, BigDecimal uncertainty) {
        BigDecimal last = readings.get(readings.size() - 1);
        Combination how = m.again().map(Action.Again::combine).orElse(Combination.LAST);
        if (readings.size() > 1 && how == Combination.BOTH_INSIDE) {
            long inside = readings.stream().filter(r -> margin(r, m.limits()).signum() >= 0).count();
            return inside == readings.size() ? Outcome.CONFORMS : inside == 0 ? Outcome.DOES_NOT_CONFORM : Outcome.UNDECIDED;
        } else if (readings.size() > 1 && how == Combination.MEAN) {
            BigDecimal sum = readings.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            return of(sum.divide(BigDecimal.valueOf(readings.size()), MathContext.DECIMAL128), m.limits(), uncertainty, m.rule());
        }
        return of(last, m.limits(), uncertainty, m.rule());
    }
}
