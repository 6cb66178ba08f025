package org.benchwright.workshop.tests;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

import org.benchwright.engine.plan.Claim;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WorkStage;

/** A plan that is another one but for a few parts. */
public final class ChangedPlan {

    private final Plan plan;
    private int revision;
    private UnitFamily family;
    private Optional<Claim> claim;
    private List<Precondition> preconditions;
    private List<Stage> stages;
    private WorkStage makeSafe;

    private ChangedPlan(Plan plan) {
        this.plan = plan;
        revision = plan.revision();
        family = plan.family();
        claim = plan.claim();
        preconditions = plan.preconditions();
        stages = plan.stages();
        makeSafe = plan.makeSafe();
    }

    /** Nothing is changed yet. */
    public static ChangedPlan of(Plan plan) {
        return new ChangedPlan(plan);
    }

    public ChangedPlan revision(int other) {
        revision = other;
        return this;
    }

    public ChangedPlan family(UnitFamily other) {
        family = other;
        return this;
    }

    public ChangedPlan claim(Optional<Claim> other) {
        claim = other;
        return this;
    }

    public ChangedPlan withoutPreconditions() {
        preconditions = List.of();
        return this;
    }

    public ChangedPlan stages(List<? extends Stage> others) {
        stages = List.copyOf(others);
        return this;
    }

    /** Every soak becomes another one. */
    public ChangedPlan soaks(UnaryOperator<SoakStage> change) {
        return stages(stages.stream().map(stage -> stage instanceof SoakStage soak ? change.apply(soak) : stage).toList());
    }

    /** A watch looks at every soak. */
    public ChangedPlan watched(SoakStage.Watch watch) {
        return soaks(s -> new SoakStage(s.name(), s.title(), s.hazards(), s.lasting(), s.keep(), s.conditions(), s.lookEvery(), s.lookTolerance(),
                s.gap(), s.stopped(), s.stoppedOutside(), Optional.of(watch)));
    }

    public ChangedPlan makeSafe(WorkStage other) {
        makeSafe = other;
        return this;
    }

    /** The plan as it is now. */
    public Plan plan() {
        return new Plan(plan.format(), plan.name(), plan.title(), revision, plan.purpose(), plan.retestOf(), plan.provesBenchFor(), family, claim,
                plan.hazards(), plan.protectedItems(), plan.instruments(), preconditions, plan.preconditionUnmet(), stages, makeSafe, plan.end(),
                plan.needsBenchProvedWithin());
    }
}
