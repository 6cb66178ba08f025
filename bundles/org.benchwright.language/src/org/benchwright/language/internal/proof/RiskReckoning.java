package org.benchwright.language.internal.proof;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.GlobalRisk;
import org.benchwright.evidence.RepeatRisk;
import org.benchwright.evidence.TestUncertaintyRatio;
import org.benchwright.language.proof.MeasurementProof;
import org.benchwright.language.proof.MeasurementProof.Risks;

/** The risks of every measurement, grid and derived value of a plan. */
public final class RiskReckoning {

    /** Assumed: so many of the units that come in conform. */
    public static final double CONFORMING = 0.95;
    /** Assumed where there is one limit only: units scatter so many times as much as a reading errs. */
    public static final double SCATTER = 4;
    /** One over the standard normal quantile of {@link #CONFORMING}, one-sided. */
    private static final double PART_OF_DISTANCE = GlobalRisk.processDeviation(1, 1 - 2 * (1 - CONFORMING));

    private final Plan plan;
    private final RiskMemory memory;
    private final List<MeasurementProof> found = new ArrayList<>();

    private RiskReckoning(Plan plan, RiskMemory memory) {
        this.plan = plan;
        this.memory = memory;
    }

    /**
     * Reckons.
     *
     * @throws CancellationException if cancelled
     */
    static List<MeasurementProof> of(Plan plan, RiskMemory memory, Cancellation cancellation) {
        RiskReckoning all = new RiskReckoning(plan, memory);
        Stream.concat(plan.stages().stream(), Stream.of(plan.makeSafe())).filter(WorkStage.class::isInstance)
                .flatMap(stage -> ((WorkStage) stage).steps().stream()).forEach(step -> all.step(step, cancellation));
        return all.found;
    }

    private void step(Step step, Cancellation cancellation) {
        for (Action action : step.actions()) {
            if (cancellation.requested()) {
                throw new CancellationException();
            }
            if (action instanceof Action.Measure m) {
                Optional<Action.Again> repeats = m.again().filter(again -> m.rule() == DecisionRule.GUARDED_BOTH_WAYS);
                instrument(Optional.of(m.instrument()), new Decided(step.name(), m.id(), m.limits(), m.rule(), repeats, m.readings(), 1));
            } else if (action instanceof Action.Grid g) {
                instrument(g.instrument(), new Decided(step.name(), g.id(), g.limits(), g.rule(), Optional.empty(), 1, StepTimes.cells(g)));
            } else if (action instanceof Action.Derive d) {
                Decided decided = new Decided(step.name(), d.id(), d.limits(), d.rule(), Optional.empty(), 1, 1);
                add(decided, new DerivedUncertainty(plan).expanded(d), InstrumentSpec.USUAL_COVERAGE);
            }
        }
    }

    private record Decided(String step, String name, Limits limits, DecisionRule rule, Optional<Action.Again> repeats, int readings,
            long cells) {
    }

    private void instrument(Optional<String> name, Decided decided) {
        Optional<InstrumentSpec> spec = name.flatMap(plan::instrument);
        add(decided, spec.flatMap(InstrumentSpec::maxUncertainty), spec.map(InstrumentSpec::coverage).orElse(InstrumentSpec.USUAL_COVERAGE));
    }

    private void add(Decided decided, Optional<Quantity> expanded, BigDecimal coverage) {
        Optional<Risks> risks = expanded.filter(u -> u.value().signum() > 0)
                .map(u -> risks(reading(decided, u, coverage.doubleValue()), decided));
        found.add(new MeasurementProof(decided.step(), decided.name(), decided.limits(), decided.rule(), expanded, coverage.doubleValue(),
                decided.readings(),
                1 + decided.repeats().map(Action.Again::atMost).orElse(0), decided.repeats().map(Action.Again::combine),
                decided.cells(), risks));
    }

    private static RepeatRisk reading(Decided decided, Quantity expanded, double coverage) {
        return RepeatRisk.of(decided.limits(), expanded, coverage, decided.rule(), new RepeatRisk.Taken(decided.readings(),
                decided.repeats().map(Action.Again::atMost).orElse(0), decided.repeats().map(Action.Again::combine).orElse(Combination.LAST)));
    }

    private Risks risks(RepeatRisk reading, Decided decided) {
        boolean twoOutcomes = decided.rule() != DecisionRule.GUARDED_BOTH_WAYS;
        return memory.of(reading, twoOutcomes, () -> risks(reading, twoOutcomes));
    }

    private static Risks risks(RepeatRisk reading, boolean twoOutcomes) {
        double reject = twoOutcomes ? worstNotAccepted(reading) : reading.worstFalseReject();
        Spread units = spread(reading);
        GlobalRisk global = GlobalRisk.of(units.middle(), units.deviation(), reading, twoOutcomes);
        OptionalDouble ratio = halfWidth(reading).stream().map(half -> TestUncertaintyRatio.of(half, 2 * reading.standardUncertainty())).findFirst();
        return new Risks(reading.worstFalseAccept(), reading.withoutRepeats().worstFalseAccept(), reject, global.falseAccept(),
                global.falseReject(), ratio, units.middle(), units.deviation());
    }

    private static double worstNotAccepted(RepeatRisk reading) {
        return 1 - Stream.of(reading.lower(), reading.upper()).flatMapToDouble(OptionalDouble::stream).map(reading::acceptance).min().orElseThrow();
    }

    private static OptionalDouble halfWidth(RepeatRisk reading) {
        return reading.lower().isPresent() && reading.upper().isPresent() && reading.upper().getAsDouble() > reading.lower().getAsDouble()
                ? OptionalDouble.of((reading.upper().getAsDouble() - reading.lower().getAsDouble()) / 2) : OptionalDouble.empty();
    }

    private record Spread(double middle, double deviation) {
    }

    /** Around the middle of two limits; inside a single one. */
    private static Spread spread(RepeatRisk reading) {
        OptionalDouble half = halfWidth(reading);
        if (half.isPresent()) {
            return new Spread(reading.lower().getAsDouble() + half.getAsDouble(), GlobalRisk.processDeviation(half.getAsDouble(), CONFORMING));
        }
        double deviation = SCATTER * reading.standardUncertainty();
        double inside = deviation / PART_OF_DISTANCE;
        return new Spread(reading.upper().isPresent() ? reading.upper().getAsDouble() - inside : reading.lower().getAsDouble() + inside, deviation);
    }
}
