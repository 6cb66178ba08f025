package org.benchwright.language.internal.proof;

import java.util.Optional;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;

/**
 * A place of a plan that a test can be at.
 *
 * @param id    its number; 0 is the beginning
 * @param stage its stage; empty at the beginning
 * @param step  its step; empty at the beginning and in a soak
 */
record Spot(int id, Optional<Stage> stage, Optional<Step> step) {

    Optional<SoakStage> soak() {
        return stage.filter(SoakStage.class::isInstance).map(SoakStage.class::cast);
    }

    /** The name that a move's count goes by, as the engine counts. */
    String name() {
        return stage.map(Stage::name).orElse("") + "." + step.map(Step::name).orElse("");
    }

    /** The name that people know it by: of the step, or of the soak. */
    String shown() {
        return step.map(Step::name).or(() -> stage.map(Stage::name)).orElse("");
    }

    /** Whether the first thing that the step does with the supply is to switch it on; it is switched off before, then. */
    boolean switchesOnFirst() {
        return step.stream().flatMap(each -> each.actions().stream())
                .filter(action -> action instanceof Action.Energise || action instanceof Action.Isolate).findFirst()
                .filter(Action.Energise.class::isInstance).isPresent();
    }
}
