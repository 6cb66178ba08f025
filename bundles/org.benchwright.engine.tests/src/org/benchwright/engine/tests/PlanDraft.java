package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.SerialMask;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.UnitFamily;
import org.benchwright.engine.plan.WorkStage;

/** A plan in the making. Unless said otherwise make safe isolates the supply, a stop of the family stays, and the end is accepted. */
final class PlanDraft {

    static final String PROCEDURE = "c16_acceptance";
    static final int REVISION = 3;
    static final String FAMILY = "tarn_c16";

    private final List<Hazard> hazards = new ArrayList<>();
    private final List<InstrumentSpec> instruments = new ArrayList<>(List.of(Parts.meter(), Parts.calibrator()));
    private final List<Precondition> preconditions = new ArrayList<>();
    private final List<Stage> stages = new ArrayList<>();
    private Move unmet = Parts.undecided("The procedure could not be carried out.");
    private Optional<Duration> benchProvedWithin = Optional.empty();
    private boolean stopStays = true;
    private WorkStage makeSafe = work("make_safe", false, Optional.empty(), List.of(), Parts.step("off", Parts.isolate("supply")));

    private PlanDraft() {
    }

    static PlanDraft plan() {
        return new PlanDraft();
    }

    PlanDraft hazard(String name, SignalWord signal) {
        hazards.add(new Hazard(name, signal, "Terminals are live.", "kill by electric shock", "Fit the cover."));
        return this;
    }

    PlanDraft instrument(InstrumentSpec spec) {
        instruments.removeIf(i -> i.name().equals(spec.name()));
        instruments.add(spec);
        return this;
    }

    PlanDraft precondition(String name) {
        return precondition(new Precondition(name, "It holds: " + name + ".", Optional.empty(), Optional.empty(), Optional.empty()));
    }

    PlanDraft precondition(String name, String valid) {
        return precondition(new Precondition(name, "It holds: " + name + ".", Optional.of(Parts.duration(valid)), Optional.of("Tester number"),
                Optional.empty()));
    }

    PlanDraft readingPrecondition(String name, Limits limits) {
        return precondition(new Precondition(name, "Room temperature", Optional.empty(), Optional.empty(), Optional.of(limits)));
    }

    PlanDraft precondition(Precondition precondition) {
        preconditions.add(precondition);
        return this;
    }

    /** The bench has to be proved before something is energised. */
    PlanDraft needsBenchProved(String within) {
        benchProvedWithin = Optional.of(Parts.duration(within));
        return this;
    }

    PlanDraft unmet(Move move) {
        unmet = move;
        return this;
    }

    PlanDraft stage(String name, Step... steps) {
        return stage(work(name, false, Optional.empty(), List.of(), steps));
    }

    PlanDraft timedStage(String name, String atMost, Step... steps) {
        return stage(work(name, false, Optional.of(Parts.duration(atMost)), List.of(), steps));
    }

    PlanDraft hazardStage(String name, String hazard, Step... steps) {
        return stage(work(name, false, Optional.empty(), List.of(hazard), steps));
    }

    PlanDraft onDemand(String name, Step... steps) {
        return stage(work(name, true, Optional.empty(), List.of(), steps));
    }

    PlanDraft stage(Stage stage) {
        stages.add(stage);
        return this;
    }

    /** 72 h, a look every 24 h with 2 h of tolerance. */
    PlanDraft soak(String name, Move stopped, Move stoppedOutside, Optional<SoakStage.Gap> gap) {
        return stage(soakStage(name, Duration.ofHours(72), List.of(), gap, stopped, stoppedOutside));
    }

    static SoakStage soakStage(String name, Duration lasting, List<String> hazards, Optional<SoakStage.Gap> gap, Move stopped,
            Move stoppedOutside) {
        return new SoakStage(name, "Unattended endurance", hazards, lasting, new Signal.ModeShows("run", List.of(Parts.steady("ok"))),
                List.of(new Condition("ambient", Parts.room())), Duration.ofHours(24), Duration.ofHours(2), gap, stopped, stoppedOutside,
                Optional.empty());
    }

    /** The same soak with a watch. */
    static SoakStage watched(SoakStage s, SoakStage.Watch watch) {
        return new SoakStage(s.name(), s.title(), s.hazards(), s.lasting(), s.keep(), s.conditions(), s.lookEvery(), s.lookTolerance(), s.gap(),
                s.stopped(), s.stoppedOutside(), Optional.of(watch));
    }

    /** A stop of this family does not stay: the unit starts again by itself. */
    PlanDraft restartsByItself() {
        stopStays = false;
        return this;
    }

    PlanDraft makeSafe(Step... steps) {
        makeSafe = work("make_safe", false, Optional.empty(), List.of(), steps);
        return this;
    }

    static WorkStage work(String name, boolean onDemand, Optional<Duration> atMost, List<String> hazards, Step... steps) {
        return new WorkStage(name, "Stage " + name, onDemand, atMost, hazards, List.of(steps));
    }

    Plan build() {
        UnitFamily family = new UnitFamily(FAMILY, "Tarn C16 modular controller", Optional.empty(),
                Optional.of(new SerialMask("C16-######")), List.of(), List.of(), List.of(), stopStays);
        return new Plan(Plan.CURRENT_FORMAT, PROCEDURE, "C16 acceptance on the bench", REVISION, "", Optional.empty(), Optional.empty(),
                family, Optional.empty(), hazards, List.of(), instruments, preconditions, unmet, stages, makeSafe, Parts.accepted(),
                benchProvedWithin);
    }
}
