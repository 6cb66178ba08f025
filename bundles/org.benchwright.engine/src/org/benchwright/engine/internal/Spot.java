package org.benchwright.engine.internal;

import java.util.Optional;

import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;

/**
 * A place in a plan by index.
 *
 * @param stage from 0; one past the last stage is make safe
 * @param step  from 0; 0 in a soak
 */
record Spot(int stage, int step) {

    /** Before the first step of make safe. */
    static Spot beforeMakeSafe(Plan plan) {
        return new Spot(plan.stages().size(), 0);
    }

    /** Where a move of the plan leads from here: out of make safe nothing leads. */
    Spot target(Plan plan, Move.GoTo move) {
        if (inMakeSafe(plan)) {
            return new Spot(stage, indexOf(move, plan.makeSafe()));
        }
        int at = plan.stageIndex(move.stage()).orElseThrow(() -> new IllegalStateException("no stage " + move.stage()));
        return new Spot(at, plan.stages().get(at) instanceof WorkStage w ? indexOf(move, w) : 0);
    }

    private static int indexOf(Move.GoTo move, WorkStage stage) {
        int step = move.step().isEmpty() ? 0 : stage.steps().stream().map(Step::name).toList().indexOf(move.step());
        if (step < 0) {
            throw new IllegalStateException("no step " + move.step() + " in stage " + stage.name());
        }
        return step;
    }

    boolean inMakeSafe(Plan plan) {
        return stage == plan.stages().size();
    }

    Stage stageIn(Plan plan) {
        return inMakeSafe(plan) ? plan.makeSafe() : plan.stages().get(stage);
    }

    /** The step; empty in a soak. */
    Optional<Step> stepIn(Plan plan) {
        return stageIn(plan) instanceof WorkStage w ? Optional.of(w.steps().get(step)) : Optional.empty();
    }

    /** The name of the step for records; empty in a soak. */
    String stepNameIn(Plan plan) {
        return stepIn(plan).map(Step::name).orElse("");
    }
}
