package org.benchwright.engine.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;

/** What the checks of an {@link ObviousModel} come to. */
abstract class ObviousChecks extends ObviousMoves {

    private static final Duration LATEST_TONE = Duration.ofSeconds(1);
    private static final int VOIDS = 3;

    ObviousChecks(Plan plan) {
        super(plan);
    }

    void check(String check, boolean good, Move otherwise) {
        say("decided " + check + " " + (good ? Outcome.CONFORMS : Outcome.DOES_NOT_CONFORM));
        if (good) {
            next();
        } else {
            lead(otherwise, check, Outcome.DOES_NOT_CONFORM);
        }
    }

    void item(Observation.ItemConfirmed c, Action.Choose choose) {
        if (!c.yes()) {
            say("decided " + c.check() + " DOES_NOT_CONFORM");
            lead(choose.failed(), c.check(), Outcome.DOES_NOT_CONFORM);
        } else if (itemsLeft(choose) == 0) {
            allItems(c.check());
        }
    }

    int itemsLeft(Action.Choose choose) {
        return choose.only().size() + choose.spare().size() - all(Observation.ItemConfirmed.class).size();
    }

    private void allItems(String check) {
        if (all(Observation.ItemConfirmed.class).stream().allMatch(Observation.ItemConfirmed::yes)) {
            say("decided " + check + " CONFORMS");
        }
        next();
    }

    <T extends Fact> List<T> all(Class<T> kind) {
        return told.stream().map(Told::fact).filter(kind::isInstance).map(kind::cast).toList();
    }

    void measured(Action.Measure m) {
        List<BigDecimal> readings = all(Observation.Measured.class).stream().map(f -> f.value().value()).toList();
        Outcome outcome = ObviousDecisions.ofAll(readings, m, new BigDecimal("0.05"));
        say("decided " + m.id() + " " + outcome);
        values.put(stepName() + "." + m.id(), ObviousDecisions.valueOfAll(readings, m));
        int left = m.again().map(Action.Again::atMost).orElse(0) - (readings.size() - 1);
        if (outcome == Outcome.UNDECIDED && left > 0) {
            say("repeated " + stepName() + "." + m.id() + " " + readings.size());
        } else {
            decided(outcome, m.id(), m.rejected(), m.undecided());
        }
    }

    @Override
    void derive(Action.Derive d) {
        Expression.Difference less = (Expression.Difference) d.value();
        BigDecimal value = values.get(((Expression.Name) less.left()).name())
                .subtract(((Expression.Fixed) less.right()).quantity().value());
        Outcome outcome = ObviousDecisions.of(value, d.limits(), new BigDecimal("0.05"), d.rule());
        say("decided " + d.id() + " " + outcome);
        decided(outcome, d.id(), d.rejected(), d.undecided());
    }

    void cellRead(Action.Grid g) {
        List<Observation.CellRead> cells = all(Observation.CellRead.class);
        List<Action.AxisValue> currents = g.axes().get(1).values();
        if (cells.size() < g.axes().get(0).values().size() * currents.size()) {
            return;
        }
        BigDecimal worstMargin = null;
        BigDecimal worstValue = null;
        for (Observation.CellRead cell : cells) {
            BigDecimal applied = currents.get(cell.cell() % currents.size()).quantity().orElseThrow().value();
            BigDecimal judged = cell.value().value().subtract(applied);
            BigDecimal margin = ObviousDecisions.margin(judged, g.limits());
            if (worstMargin == null || margin.compareTo(worstMargin) < 0) {
                worstMargin = margin;
                worstValue = judged;
            }
        }
        Outcome outcome = ObviousDecisions.of(worstValue, g.limits(), new BigDecimal("0.004"), g.rule());
        say("decided " + g.id() + " " + outcome);
        decided(outcome, g.id(), g.rejected(), g.undecided());
    }

    private void decided(Outcome outcome, String check, Move rejected, Move undecided) {
        switch (outcome) {
            case DOES_NOT_CONFORM -> lead(rejected, check, outcome);
            case UNDECIDED -> lead(undecided, check, outcome);
            default -> next();
        }
    }

    // ---- expectations

    /** When a tone is due; counted from its mark. */
    Duration due(Action.Expect e, boolean opens) {
        return mark(e).age().plus(opens ? e.window().opens() : e.window().closes());
    }

    ModelLog.Line mark(Action.Expect e) {
        return log.last("mark", e.window().mark()).orElseThrow();
    }

    boolean toneGiven(Action.Expect e, boolean opens) {
        Fact.ToneGiven.Tone tone = opens ? Fact.ToneGiven.Tone.OPENS : Fact.ToneGiven.Tone.CLOSES;
        return all(Fact.ToneGiven.class).stream().anyMatch(t -> t.check().equals(e.id()) && t.tone() == tone);
    }

    /** What was seen, as far as it is known: a late tone makes it unseen. */
    Optional<Sight> sight(Action.Expect e) {
        boolean late = told.stream().anyMatch(t -> t.fact() instanceof Fact.ToneGiven tone && tone.check().equals(e.id())
                && (t.sitting() != mark(e).sitting()
                        || t.age().minus(due(e, tone.tone() == Fact.ToneGiven.Tone.OPENS)).compareTo(LATEST_TONE) > 0));
        return late ? Optional.of(Sight.NOT_LOOKING)
                : all(Observation.Seen.class).stream().filter(s -> s.check().equals(e.id())).map(Observation.Seen::answer).findFirst();
    }

    List<Action.Expect> expected() {
        return group().stream().map(Action.Expect.class::cast).toList();
    }

    void expectations() {
        if (expected().stream().anyMatch(e -> sight(e).isEmpty())) {
            return;
        }
        for (Action.Expect e : expected()) {
            say("decided " + e.id() + " " + switch (sight(e).orElseThrow()) {
                case YES -> Outcome.CONFORMS;
                case NO -> Outcome.DOES_NOT_CONFORM;
                case NOT_LOOKING -> Outcome.UNDECIDED;
            });
        }
        afterExpectations();
    }

    private void afterExpectations() {
        List<String> forgiven = all(Fact.Released.class).stream().filter(Fact.Released::given).map(Fact.Released::check).toList();
        for (Action.Expect e : expected()) {
            if (sight(e).orElseThrow() == Sight.NO && !forgiven.contains(e.id())) {
                lead(e.failed(), e.id(), Outcome.DOES_NOT_CONFORM);
                return;
            }
        }
        if (expected().stream().anyMatch(e -> sight(e).orElseThrow() == Sight.NOT_LOOKING)) {
            repeat();
        } else {
            next();
        }
    }

    void repeat() {
        int before = log.count("void", stepName());
        if (before >= VOIDS) {
            lead(Parts.undecided("void"), "", Outcome.UNDECIDED);
            return;
        }
        note("void", stepName());
        say("departure REPEATED");
        if (makingSafe() || live.containsAll(liveAtOpening)) {
            say("repeated " + stepName() + ". " + (before + 1));
            arrive(stage, step);
        } else {
            offBeforePowerUp = !live.isEmpty();
            toCold("");
        }
    }

    // ---- releases

    void released(Fact.Released r) {
        if (release.isEmpty()) {
            check(r.check(), r.given(), ((Action.Release) current()).failed());
        } else if (r.given()) {
            release = Optional.empty();
            say("decided " + r.check() + " RELEASED");
            say("departure RELEASED");
            if (worst == Outcome.CONFORMS) {
                worst = Outcome.RELEASED;
            }
            afterRelease(r.check());
        } else if (!makingSafe()) {
            release = Optional.empty();
            conclude(Verdict.UNDECIDED, Outcome.UNDECIDED);
        }
    }

    private void afterRelease(String check) {
        if (current() instanceof Action.Expect && expected().stream().anyMatch(e -> e.id().equals(check))) {
            afterExpectations();
        } else if (current() instanceof Action.Choose choose) {
            if (itemsLeft(choose) == 0) {
                allItems(check);
            }
        } else {
            next();
        }
    }
}
