package org.benchwright.engine.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Numbers;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.ConformityDecision;

/** Deciding measurements and grids with the rule of the plan and the uncertainty of the instrument at hand. */
public final class Readings {

    private Readings() {
    }

    static void measured(RunState s, Observation.Measured reading) {
        Action.Measure m = (Action.Measure) s.action();
        s.progress(s.progress().entered(reading));
        List<Quantity> readings = s.progress().entries().stream().map(f -> ((Observation.Measured) f).value()).toList();
        if (readings.size() % m.readings() != 0) {
            return; // the mean of so many is not complete
        }
        List<Quantity> values = means(readings, m);
        Combined result = combine(values, m, uncertainty(s, Optional.of(m.instrument()), m.limits(), readings));
        Checks.decide(s, m.id(), result.outcome(), Optional.of(result.numbers()), result.words());
        s.memory().values().put(DerivedValues.key(s, m.id()), result.decision().value());
        int repeatsLeft = m.again().map(a -> a.atMost() - (values.size() - 1)).orElse(0);
        switch (result.outcome()) {
            case CONFORMS, RELEASED -> Steps.next(s);
            case DOES_NOT_CONFORM -> Moves.take(s, m.rejected(), m.id(), result.words(), result.outcome());
            case UNDECIDED -> {
                if (repeatsLeft > 0) {
                    s.following().add(new Derived.Repeated(s.stage().name(), s.stepName(), m.id(), Words.of("because.undecided"),
                            values.size()));
                } else {
                    Moves.take(s, m.undecided(), m.id(), result.words(), result.outcome());
                }
            }
        }
    }

    /** The mean of each round of readings, in the unit of the limits. The uncertainty stays that of one: what a mean takes away is seldom known. */
    private static List<Quantity> means(List<Quantity> readings, Action.Measure m) {
        if (m.readings() == 1) {
            return readings;
        }
        UnitOfMeasure unit = m.limits().unit();
        List<Quantity> means = new ArrayList<>();
        for (int first = 0; first < readings.size(); first += m.readings()) {
            BigDecimal sum = readings.subList(first, first + m.readings()).stream().map(r -> r.to(unit).value())
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
            means.add(new Quantity(sum.divide(BigDecimal.valueOf(m.readings()), MathContext.DECIMAL64).stripTrailingZeros(), unit));
        }
        return means;
    }

    /** What one reading or several together come to. */
    record Combined(ConformityDecision decision) {
        Outcome outcome() {
            return switch (decision.outcome()) {
                case ACCEPTED -> Outcome.CONFORMS;
                case REJECTED -> Outcome.DOES_NOT_CONFORM;
                case UNDECIDED -> Outcome.UNDECIDED;
            };
        }

        Numbers numbers() {
            UnitOfMeasure unit = decision.limits().unit();
            return new Numbers(decision.rule().word(), decision.value().to(unit).toString(), decision.limits().toString(),
                    decision.expandedUncertainty().to(unit.forDifferences()).toString(), decision.margin().toString());
        }

        String words() {
            boolean inside = decision.margin().value().signum() >= 0;
            Quantity distance = inside ? decision.margin() : decision.margin().negate();
            return Words.of("measure." + outcome().name(), decision.value(), decision.limits(), distance,
                    Words.of(inside ? "measure.inside" : "measure.outside"), decision.expandedUncertainty());
        }
    }

    private static Combined combine(List<Quantity> values, Action.Measure m, Uncertainty u) {
        Combination how = m.again().map(Action.Again::combine).orElse(Combination.LAST);
        return new Combined(how.decide(values, m.limits(), u.expanded(), u.coverage(), m.rule()));
    }

    /** The expanded uncertainty that a value is decided with. */
    record Uncertainty(Quantity expanded, BigDecimal coverage) {
    }

    /** At the readings themselves, where a register tells it: the largest among them; elsewhere as the instrument was named with. */
    private static Uncertainty uncertainty(RunState s, Optional<String> instrument, Limits limits, List<Quantity> readings) {
        Uncertainty named = uncertainty(s, instrument, limits);
        Optional<InstrumentSpec> spec = instrument.flatMap(s.plan()::instrument);
        Optional<List<InstrumentRange>> ranges = instrument.map(name -> s.memory().instruments().get(name)).flatMap(Observation.InstrumentNamed::entry)
                .map(Observation.RegisterEntry::ranges);
        if (ranges.isEmpty() || spec.isEmpty()) {
            return named;
        }
        List<InstrumentRange> fitting = RegisterRules.fitting(spec.get(), ranges.get());
        List<Optional<Quantity>> there = readings.stream().map(reading -> RegisterRules.at(fitting, reading, named.coverage())).toList();
        // A reading beyond every range is no reading of a known uncertainty: what it was named with is the best there is.
        boolean all = there.stream().allMatch(Optional::isPresent);
        return all ? new Uncertainty(there.stream().flatMap(Optional::stream).reduce((a, b) -> a.compareTo(b) >= 0 ? a : b).orElseThrow(), named.coverage())
                : named;
    }

    /** From the instrument named at the bench, brought to the coverage factor that the plan speaks of. */
    private static Uncertainty uncertainty(RunState s, Optional<String> instrument, Limits limits) {
        return uncertainty(s, instrument, limits, instrument.flatMap(s.plan()::instrument).map(InstrumentSpec::coverage).orElse(InstrumentSpec.USUAL_COVERAGE));
    }

    /** The same, brought to a coverage factor. */
    static Uncertainty uncertainty(RunState s, Optional<String> instrument, Limits limits, BigDecimal coverage) {
        Quantity none = new Quantity(BigDecimal.ZERO, limits.unit().forDifferences());
        Quantity expanded = instrument.map(name -> s.memory().instruments().get(name))
                .flatMap(named -> named.uncertainty().map(u -> new Quantity(scaled(u.value(), named.coverage(), coverage), u.unit())))
                .orElse(none);
        return new Uncertainty(expanded, coverage);
    }

    private static BigDecimal scaled(BigDecimal expanded, BigDecimal from, BigDecimal to) {
        return from.compareTo(to) == 0 ? expanded : expanded.multiply(to).divide(from, MathContext.DECIMAL64).stripTrailingZeros();
    }

    // ---- grids

    static void cellRead(RunState s, Observation.CellRead reading) {
        Action.Grid g = (Action.Grid) s.action();
        s.progress(s.progress().entered(reading));
        List<Fact> readings = s.progress().entries();
        if (readings.size() < Cells.count(g)) {
            return;
        }
        Combined worst = smallestMargin(combined(s, g));
        String words = worstWords("grid.worst", s, g);
        Checks.decide(s, g.id(), worst.outcome(), Optional.of(worst.numbers()), words);
        switch (worst.outcome()) {
            case CONFORMS, RELEASED -> Steps.next(s);
            case DOES_NOT_CONFORM -> Moves.take(s, g.rejected(), g.id(), words, worst.outcome());
            case UNDECIDED -> Moves.take(s, g.undecided(), g.id(), words, worst.outcome());
        }
    }

    private static List<Combined> combined(RunState s, Action.Grid g) {
        List<Fact> readings = s.progress().entries();
        Uncertainty u = uncertainty(s, g.instrument(), g.limits());
        List<Combined> cells = new ArrayList<>();
        for (int cell = 0; cell < readings.size(); cell++) {
            Quantity judged = Cells.judged(g, cell, ((Observation.CellRead) readings.get(cell)).value());
            cells.add(new Combined(ConformityDecision.decide(judged, g.limits(), u.expanded(), u.coverage(), g.rule())));
        }
        return cells;
    }

    /** The worst of the cells so far in words; empty where none was read, or no grid is. */
    public static Optional<String> worstSoFar(RunState s) {
        int read = s.stepOpen() && s.action() instanceof Action.Grid ? s.progress().entries().size() : 0;
        return read == 0 ? Optional.empty() : Optional.of(worstWords(read == 1 ? "grid.only" : "grid.worst", s, (Action.Grid) s.action()));
    }

    private static String worstWords(String key, RunState s, Action.Grid g) {
        List<Combined> cells = combined(s, g);
        Combined worst = smallestMargin(cells);
        return Words.of(key, cells.size(), Cells.words(g, cells.indexOf(worst)), worst.words());
    }

    /** The worst cell: the one with the smallest margin, which with one rule and one uncertainty also has the worst outcome. */
    private static Combined smallestMargin(List<Combined> cells) {
        return cells.stream().min(Comparator.comparing(c -> c.decision().margin())).orElseThrow();
    }
}
