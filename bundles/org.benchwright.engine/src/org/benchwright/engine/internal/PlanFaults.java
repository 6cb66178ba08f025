package org.benchwright.engine.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;

/**
 * Why a plan cannot be carried out. Whoever wrote the procedure should have been told long before; a test is not opened on such a plan,
 * because it could reach a place where nothing is asked, or go round for ever.
 */
public final class PlanFaults {

    private final Plan plan;
    private final List<String> faults = new ArrayList<>();

    private PlanFaults(Plan plan) {
        this.plan = plan;
    }

    /** The faults in plain words; empty for a plan that can be carried out. */
    public static List<String> of(Plan plan) {
        PlanFaults all = new PlanFaults(plan);
        all.names();
        all.instruments();
        all.moves();
        for (Stage stage : plan.stages()) {
            all.stage(stage);
        }
        all.stage(plan.makeSafe());
        return List.copyOf(all.faults);
    }

    private void add(String key, Object... arguments) {
        faults.add(Words.of(key, arguments));
    }

    // ---- names

    private void names() {
        boolean begins = plan.stages().stream().anyMatch(s -> !(s instanceof WorkStage w && w.onDemand()));
        if (!begins) {
            add("plan.noStage");
        }
        once("stage", plan.stages().stream().map(Stage::name));
        once("step", plan.steps().map(Step::name));
        once("hazard", plan.hazards().stream().map(Hazard::name));
        once("instrument", plan.instruments().stream().map(InstrumentSpec::name));
        once("precondition", plan.preconditions().stream().map(Precondition::name));
    }

    private void once(String kind, Stream<String> names) {
        twice(names).forEach(name -> add("plan.twice", Words.of("plan.kind." + kind), name));
    }

    static Collection<String> twice(Stream<String> names) {
        Set<String> seen = new HashSet<>();
        return names.filter(name -> !seen.add(name)).distinct().toList();
    }

    private void instruments() {
        for (InstrumentSpec spec : plan.instruments()) {
            List<UnitOfMeasure> decided = Instruments.decidedIn(plan, spec.name());
            boolean uses = spec.maxUncertainty().isPresent() || Instruments.guards(plan, spec.name());
            Stream<UnitOfMeasure> all = Stream.concat(spec.maxUncertainty().stream().map(u -> u.unit()), decided.stream());
            List<UnitOfMeasure> kinds = all.toList();
            if (uses && kinds.stream().anyMatch(unit -> !unit.sameDimension(kinds.get(0)))) {
                add("plan.readsTwo", spec.name());
            }
            if (spec.maxUncertainty().filter(u -> u.unit().hasOffset() || u.value().signum() < 0).isPresent()
                    || spec.coverage().signum() <= 0) {
                add("plan.uncertainty", spec.name());
            }
        }
    }

    // ---- stages

    private void moves() {
        if (!(plan.preconditionUnmet() instanceof Move.Conclude)) {
            add("plan.unmet");
        }
    }

    private void stage(Stage stage) {
        stage.hazards().stream().filter(h -> plan.hazard(h).isEmpty()).forEach(h -> add("plan.noHazard", stage.name(), h));
        if (stage instanceof SoakStage soak) {
            soak(soak);
        } else if (stage instanceof WorkStage w) {
            for (int i = 0; i < w.steps().size(); i++) {
                Step step = w.steps().get(i);
                step.hazards().stream().filter(h -> plan.hazard(h).isEmpty())
                        .forEach(h -> add("plan.unknown", step.name(), Words.of("plan.kind.hazard"), h));
                faults.addAll(StepFaults.of(plan, step));
                int at = i;
                StepFaults.moves(step).forEach(move -> move(move, step.name(), w, at));
            }
        }
    }

    private void soak(SoakStage soak) {
        if (soak.lasting().isZero() || soak.lasting().isNegative() || soak.lookEvery().isZero() || soak.lookEvery().isNegative()) {
            add("plan.soakTimes", soak.name());
        }
        if (soak.conditions().stream().anyMatch(c -> c.limits().inverted())) {
            add("plan.limits", soak.name(), soak.conditions());
        }
        Stream<Move> moves = Stream.concat(Stream.of(soak.stopped(), soak.stoppedOutside()),
                soak.gap().stream().map(SoakStage.Gap::instead));
        moves.forEach(move -> soakMove(soak, move));
    }

    private void soakMove(SoakStage soak, Move move) {
        if (move instanceof Move.ReleaseBy) {
            add("plan.soakRelease", soak.name());
        } else if (move instanceof Move.BeginAgain again) {
            bound(soak.name(), again.bound());
            soakMove(soak, again.bound().instead());
        } else if (move instanceof Move.GoTo go) {
            target(go, soak.name(), indexOf(soak), 0);
            go.bound().ifPresent(bound -> soakMove(soak, bound.instead()));
        }
    }

    // ---- moves of steps

    private void move(Move move, String step, WorkStage stage, int at) {
        if (move instanceof Move.BeginAgain) {
            add("plan.again", step);
        } else if (move instanceof Move.GoTo go) {
            if (stage.equals(plan.makeSafe())) {
                targetInMakeSafe(go, step, at);
            } else {
                target(go, step, indexOf(stage), at);
            }
            go.bound().ifPresent(bound -> move(bound.instead(), step, stage, at));
        }
    }

    private void bound(String step, Move.Bound bound) {
        if (bound.atMost() < 1) {
            add("plan.bound", step, bound.atMost());
        }
    }

    private void targetInMakeSafe(Move.GoTo go, String step, int at) {
        int target = stepIndex(plan.makeSafe(), go.step());
        if (target < 0 || !go.stage().equals(plan.makeSafe().name())) {
            add("plan.leavesMakeSafe", go.stage() + " " + go.step());
        } else {
            limit(go, step, target > at);
        }
    }

    private void target(Move.GoTo go, String step, int stage, int at) {
        int targetStage = plan.stageIndex(go.stage()).orElse(-1);
        int targetStep = targetStage < 0 ? -1 : plan.stages().get(targetStage) instanceof WorkStage w ? stepIndex(w, go.step()) : 0;
        if (targetStep < 0) {
            add("plan.target", step, go.stage() + " " + go.step());
        } else {
            limit(go, step, targetStage > stage || targetStage == stage && targetStep > at);
        }
    }

    /** A move forward comes to an end by itself; every other one needs a limit. */
    private void limit(Move.GoTo go, String step, boolean forward) {
        go.bound().ifPresent(bound -> bound(step, bound));
        if (go.bound().isEmpty() && !forward) {
            add("plan.endless", step, go.step().isEmpty() ? go.stage() : go.step());
        }
    }

    private int indexOf(Stage stage) {
        return plan.stageIndex(stage.name()).orElseThrow();
    }

    private static int stepIndex(WorkStage stage, String step) {
        return step.isEmpty() ? 0 : stage.steps().stream().map(Step::name).toList().indexOf(step);
    }
}
