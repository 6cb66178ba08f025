package org.benchwright.engine.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Numbers;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.Sight;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.ConformityDecision;

/** Deciding checks: each fact that completes one queues its decision and where it leads. */
final class Checks {

    /** A tone later than this says nothing about the deadline any more: the check is void. */
    static final Duration LATEST_TONE = Duration.ofSeconds(1);
    /** How often a check may be void before the test gives up. */
    static final int VOIDS = 3;

    /** Where nothing else is said: the factor for about 95 % (JCGM 100, 6.3.3). */
    private static final BigDecimal USUAL_COVERAGE = BigDecimal.valueOf(2);

    private Checks() {
    }

    static void pass(RunState s, String check, String words) {
        decide(s, check, Outcome.CONFORMS, Optional.empty(), words);
        Steps.next(s);
    }

    static void fail(RunState s, String check, String words, Move move) {
        decide(s, check, Outcome.DOES_NOT_CONFORM, Optional.empty(), words);
        Moves.take(s, move, check, words, Outcome.DOES_NOT_CONFORM);
    }

    private static void decide(RunState s, String check, Outcome outcome, Optional<Numbers> numbers, String words) {
        s.following().add(new Derived.CheckDecided(check, outcome, numbers, words));
    }

    // ---- expectations

    static void tone(RunState s, Fact.ToneGiven tone) {
        Action.Expect expect = Demands.group(s).stream().filter(e -> e.id().equals(tone.check())).findFirst().orElseThrow();
        boolean opens = tone.tone() == Fact.ToneGiven.Tone.OPENS;
        s.progress(s.progress().tone(tone.check(), opens, !opens));
        Duration after = opens ? expect.window().opens() : expect.window().closes();
        Duration late = s.lastMoment().since(s.marks().get(expect.window().mark())).minus(after);
        if (late.compareTo(LATEST_TONE) > 0) {
            s.progress(s.progress().answered(new Fact.Seen(tone.check(), Sight.NOT_LOOKING, "")));
            decideGroup(s);
        }
    }

    static void seen(RunState s, Fact.Seen answer) {
        s.progress(s.progress().answered(answer));
        decideGroup(s);
    }

    /** Decides all expectations that run together, once all are answered. */
    private static void decideGroup(RunState s) {
        List<Action.Expect> group = Demands.group(s);
        Map<String, Fact.Seen> answers = s.progress().seen();
        if (!group.stream().allMatch(e -> answers.containsKey(e.id()))) {
            return;
        }
        Optional<Action.Expect> failed = Optional.empty();
        boolean unseen = false;
        for (Action.Expect e : group) {
            Fact.Seen answer = answers.get(e.id());
            decide(s, e.id(), outcome(answer.answer()), Optional.empty(), words(e, answer));
            unseen |= answer.answer() == Sight.NOT_LOOKING;
            failed = failed.isEmpty() && answer.answer() == Sight.NO ? Optional.of(e) : failed;
        }
        if (failed.isPresent()) {
            Action.Expect e = failed.get();
            Moves.take(s, e.failed(), e.id(), words(e, answers.get(e.id())), Outcome.DOES_NOT_CONFORM);
        } else if (unseen) {
            repeatStep(s, Words.of("because.unseen"));
        } else {
            Steps.next(s);
        }
    }

    private static Outcome outcome(Sight answer) {
        return switch (answer) {
            case YES -> Outcome.CONFORMS;
            case NO -> Outcome.DOES_NOT_CONFORM;
            case NOT_LOOKING -> Outcome.UNDECIDED;
        };
    }

    private static String words(Action.Expect e, Fact.Seen answer) {
        String expected = SignalWords.of(e.sequence()) + " " + SignalWords.of(e.window());
        return switch (answer.answer()) {
            case YES -> Words.of("expect.yes", expected);
            case NO -> answer.asSeen().isBlank() ? Words.of("expect.no", expected) : Words.of("expect.noSeen", expected, answer.asSeen());
            case NOT_LOOKING -> Words.of("expect.void", expected);
        };
    }

    /** The step is carried out once more because a check in it is void; that is a departure, and bounded. */
    static void repeatStep(RunState s, String because) {
        String counted = s.stage().name() + "." + s.stepName() + " void";
        int taken = s.timesTaken(counted);
        if (taken >= VOIDS) {
            String words = Words.of("because.voidTooOften", s.stepName(), VOIDS);
            Moves.take(s, new Move.Conclude(Verdict.UNDECIDED, words), "", words, Outcome.UNDECIDED);
            return;
        }
        s.count(counted);
        s.following().add(new Derived.DepartureNoted(DepartureKind.REPEATED, Words.of("departure.repeated", s.stepName(), because)));
        s.following().add(new Derived.Repeated(s.stage().name(), s.stepName(), "", because, taken + 1));
    }

    // ---- measurements

    static void measured(RunState s, Fact.Measured reading) {
        Action.Measure m = (Action.Measure) s.action();
        s.progress(s.progress().read(reading));
        List<Quantity> values = s.progress().readings().stream().map(f -> ((Fact.Measured) f).value()).toList();
        Combined result = combine(values, m, uncertainty(s, Optional.of(m.instrument()), m.limits()));
        decide(s, m.id(), result.outcome(), Optional.of(result.numbers()), result.words());
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
            return new Numbers(decision.rule().word(), decision.value().toString(), decision.limits().toString(),
                    decision.expandedUncertainty().toString(), decision.margin().toString());
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

    /** From the instrument named at the bench, brought to the coverage factor that the plan speaks of. */
    private static Uncertainty uncertainty(RunState s, Optional<String> instrument, Limits limits) {
        UnitOfMeasure unit = limits.unit().forDifferences();
        BigDecimal coverage = instrument.flatMap(s.plan()::instrument).map(InstrumentSpec::coverage).orElse(USUAL_COVERAGE);
        BigDecimal expanded = instrument.map(name -> s.instruments().get(name))
                .flatMap(named -> named.uncertainty().map(u -> scaled(u.exactIn(unit), named.coverage(), coverage)))
                .orElse(BigDecimal.ZERO);
        return new Uncertainty(new Quantity(expanded, unit), coverage);
    }

    private static BigDecimal scaled(BigDecimal expanded, BigDecimal from, BigDecimal to) {
        return from.compareTo(to) == 0 ? expanded : expanded.multiply(to).divide(from, MathContext.DECIMAL64).stripTrailingZeros();
    }

    // ---- grids

    static void cellRead(RunState s, Fact.CellRead reading) {
        Action.Grid g = (Action.Grid) s.action();
        s.progress(s.progress().read(reading));
        List<Fact> readings = s.progress().readings();
        if (readings.size() < Cells.count(g)) {
            return;
        }
        Uncertainty u = uncertainty(s, g.instrument(), g.limits());
        List<Combined> cells = new ArrayList<>();
        for (int cell = 0; cell < readings.size(); cell++) {
            Quantity judged = judged(g, cell, ((Fact.CellRead) readings.get(cell)).value());
            cells.add(new Combined(ConformityDecision.decide(judged, g.limits(), u.expanded(), u.coverage(), g.rule())));
        }
        Combined worst = smallestMargin(cells);
        int at = cells.indexOf(worst);
        String words = Words.of("grid.worst", cells.size(), SignalWords.of(Cells.at(g, at)), worst.words());
        decide(s, g.id(), worst.outcome(), Optional.of(worst.numbers()), words);
        switch (worst.outcome()) {
            case CONFORMS, RELEASED -> Steps.next(s);
            case DOES_NOT_CONFORM -> Moves.take(s, g.rejected(), g.id(), words, worst.outcome());
            case UNDECIDED -> Moves.take(s, g.undecided(), g.id(), words, worst.outcome());
        }
    }

    /** The worst cell: the one with the smallest margin, which with one rule and one uncertainty also has the worst outcome. */
    private static Combined smallestMargin(List<Combined> cells) {
        return cells.stream().min(Comparator.comparing(c -> c.decision().margin())).orElseThrow();
    }

    private static Quantity judged(Action.Grid g, int cell, Quantity reading) {
        Map<String, Quantity> values = new HashMap<>();
        List<Action.AxisValue> at = Cells.at(g, cell);
        for (int i = 0; i < at.size(); i++) {
            String axis = g.axes().get(i).name();
            at.get(i).quantity().ifPresent(q -> values.put(axis, q));
        }
        values.put(g.reading(), reading);
        return g.judged().value(values).to(g.limits().unit());
    }

    // ---- entries

    static void compared(RunState s, Fact.Compared c) {
        Action.Compare action = (Action.Compare) s.action();
        boolean same = plain(c.left()).equals(plain(c.right()));
        if (same) {
            pass(s, c.check(), Words.of("compare.same", action.left(), action.right(), c.left().strip()));
        } else {
            fail(s, c.check(), Words.of("compare.differ", action.left(), c.left().strip(), action.right(), c.right().strip()),
                    action.failed());
        }
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
    }

    static void confirmed(RunState s, Fact.Confirmed c) {
        Action.Confirm action = (Action.Confirm) s.action();
        if (c.yes()) {
            pass(s, c.check(), Words.of("confirm.yes", action.statement()));
        } else {
            fail(s, c.check(), Words.of("confirm.no", action.statement()), action.failed());
        }
    }

    static void itemConfirmed(RunState s, Fact.ItemConfirmed c) {
        Action.Choose action = (Action.Choose) s.action();
        s.progress(s.progress().confirmed(c.item()));
        if (!c.yes()) {
            fail(s, c.check(), Words.of("choose.no", c.item()), action.failed());
        } else if (s.progress().items().size() == action.only().size() + action.spare().size()) {
            pass(s, c.check(), Words.of("choose.yes"));
        }
    }

    static void released(RunState s, Fact.Released r) {
        Optional<RunState.PendingRelease> pending = s.release();
        if (pending.isPresent()) {
            releaseOfFailure(s, r, pending.get());
        } else if (r.given()) {
            pass(s, r.check(), Words.of("release.given", r.by().id()));
        } else {
            fail(s, r.check(), Words.of("release.refused", r.by().id()), ((Action.Release) s.action()).failed());
        }
    }

    private static void releaseOfFailure(RunState s, Fact.Released r, RunState.PendingRelease pending) {
        if (r.given()) {
            s.release(Optional.empty());
            String words = Words.of("release.failure", pending.because(), r.by().id(), pending.asked().statement());
            decide(s, r.check(), Outcome.RELEASED, Optional.empty(), words);
            s.following().add(new Derived.DepartureNoted(DepartureKind.RELEASED, words));
            s.worsenStep(Outcome.RELEASED);
            Steps.next(s);
        } else if (!s.makingSafe()) {
            s.release(Optional.empty());
            String words = Words.of("release.refusedFailure", pending.because(), r.by().id());
            Moves.take(s, new Move.Conclude(Verdict.UNDECIDED, words), r.check(), words, Outcome.UNDECIDED);
        }
        // In make safe a refusal changes nothing: the unit stays in somebody's hands until it is safe.
    }

    static void answered(RunState s, Fact.PreconditionAnswered a) {
        Precondition precondition = s.plan().preconditions().stream().filter(p -> p.name().equals(a.precondition())).findFirst().orElseThrow();
        boolean inside = precondition.reading().isEmpty()
                || a.reading().map(r -> precondition.reading().get().contains(r)).orElse(false);
        if (a.met() && inside) {
            s.openPreconditions().remove(a.precondition());
            Moment now = s.lastMoment();
            s.preconditionsMet().put(a.precondition(), now);
        } else {
            Moves.take(s, s.plan().preconditionUnmet(), a.precondition(), Words.of("precondition.unmet", precondition.statement()),
                    Outcome.UNDECIDED);
        }
    }
}
