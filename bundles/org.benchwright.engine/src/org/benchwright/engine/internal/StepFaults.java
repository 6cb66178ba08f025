package org.benchwright.engine.internal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.benchwright.evidence.DecisionRule;

/** Why a step cannot be carried out. */
final class StepFaults {

    private final Plan plan;
    private final Step step;
    private final Set<String> marks = new HashSet<>();
    private final List<String> faults = new ArrayList<>();
    private boolean released;

    private StepFaults(Plan plan, Step step) {
        this.plan = plan;
        this.step = step;
    }

    static List<String> of(Plan plan, Step step) {
        StepFaults all = new StepFaults(plan, step);
        PlanFaults.twice(step.actions().stream().map(Action::id))
                .forEach(id -> all.add("plan.twice", Words.of("plan.kind.action"), step.name() + "." + id));
        step.actions().forEach(all::action);
        return all.faults;
    }

    /** Everywhere that a step can lead, other than on. */
    static List<Move> moves(Step step) {
        return step.actions().stream().flatMap(StepFaults::moves).toList();
    }

    private static Stream<Move> moves(Action action) {
        if (action instanceof Action.Expect e) {
            return Stream.of(e.failed());
        } else if (action instanceof Action.Measure m) {
            return Stream.of(m.rejected(), m.undecided());
        } else if (action instanceof Action.Grid g) {
            return Stream.of(g.rejected(), g.undecided());
        } else if (action instanceof Action.Confirm c) {
            return Stream.of(c.failed());
        } else if (action instanceof Action.Compare c) {
            return Stream.of(c.failed());
        } else if (action instanceof Action.Choose c) {
            return Stream.of(c.failed());
        } else if (action instanceof Action.Release r) {
            return Stream.of(r.failed());
        } else if (action instanceof Action.Derive d) {
            return Stream.of(d.rejected(), d.undecided());
        } else if (action instanceof Action.Branch b) {
            return b.to().stream().map(Move.class::cast);
        } else if (action instanceof Action.Go g) {
            return Stream.of(g.to());
        }
        return Stream.empty();
    }

    private void add(String key, Object... arguments) {
        faults.add(Words.of(key, arguments));
    }

    private void action(Action action) {
        if (action instanceof Action.Mark m) {
            marks.add(m.id());
        } else if (action instanceof Action.Release) {
            released = true;
        } else if (action instanceof Action.Expect e && !marks.contains(e.window().mark())) {
            add("plan.mark", step.name(), e.window().mark());
        } else if (action instanceof Action.Measure m) {
            instrument(m.instrument());
            limits(m.id(), m.limits());
            if (m.again().filter(a -> a.atMost() < 1).isPresent()) {
                add("plan.bound", step.name(), m.again().get().atMost());
            }
        } else if (action instanceof Action.Apply a && !a.instrument().isEmpty()) {
            instrument(a.instrument());
        } else if (action instanceof Action.Grid g) {
            grid(g);
        } else if (action instanceof Action.Derive d) {
            limits(d.id(), d.limits());
        } else if (action instanceof Action.Choose c) {
            choose(c);
        }
    }

    private void instrument(String name) {
        if (plan.instrument(name).isEmpty()) {
            add("plan.unknown", step.name(), Words.of("plan.kind.instrument"), name);
        }
    }

    private void limits(String check, Limits limits) {
        if (limits.inverted()) {
            add("plan.limits", step.name(), check);
        }
    }

    private void grid(Action.Grid g) {
        Stream.concat(g.instrument().stream(), g.axes().stream().flatMap(a -> a.instrument().stream())).forEach(this::instrument);
        limits(g.id(), g.limits());
        if (g.rule() != DecisionRule.SIMPLE && g.instrument().isEmpty()) {
            add("plan.guardless", step.name(), g.id());
        }
        if (g.axes().isEmpty() || g.axes().stream().anyMatch(a -> a.values().isEmpty())) {
            add("plan.noCell", step.name(), g.id());
            return;
        }
        Quantity zero = new Quantity(BigDecimal.ZERO, g.unit());
        try {
            for (int cell = 0; cell < Cells.count(g); cell++) {
                Cells.judged(g, cell, zero);
            }
        } catch (IllegalArgumentException e) {
            add("plan.judged", step.name(), g.id(), e.getMessage());
        }
    }

    private void choose(Action.Choose c) {
        if (c.only().isEmpty() && c.spare().isEmpty()) {
            add("plan.noItem", step.name(), c.id());
        }
        PlanFaults.twice(Stream.concat(c.only().stream(), c.spare().stream()).map(Action.Choose.Item::name))
                .forEach(name -> add("plan.twice", Words.of("plan.kind.item"), step.name() + "." + name));
        if (!released) {
            c.only().stream().filter(Action.Choose.Item::protect).forEach(i -> add("plan.protected", step.name(), i.title()));
        }
    }
}
