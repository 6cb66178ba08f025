package org.benchwright.engine.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.WorkStage;

/** Where an {@link ObviousModel} is and what it remembers. */
abstract class ObviousState {

    final Plan plan;
    final ModelLog log = new ModelLog();
    List<String> story = new ArrayList<>();
    final Set<String> live = new LinkedHashSet<>();
    Set<String> liveAtOpening = Set.of();
    Duration now = Duration.ZERO;
    int sitting = 1;

    boolean rehearsal;
    int stage;
    int step;
    int action;
    boolean inStep;
    Outcome worst = Outcome.CONFORMS;
    /** Facts told for the current action, with their times. */
    final List<Told> told = new ArrayList<>();
    final List<String> openPreconditions = new ArrayList<>();
    /** What was measured and derived last, by step and name. */
    final Map<String, BigDecimal> values = new HashMap<>();
    final Map<String, Boolean> answers = new HashMap<>();
    Optional<WaitingFor> release = Optional.empty();
    /** What proved the bench, as it was told last. */
    Optional<Fact.BenchProved> proof = Optional.empty();
    boolean powerAsked;
    boolean offBeforePowerUp;
    boolean offBeforeTheEnd;
    Optional<Verdict> concluding = Optional.empty();
    Optional<Verdict> ended = Optional.empty();

    /** A fact with the age of the test when it was told. */
    record Told(Fact fact, Duration age, int sitting) {
    }

    /** A release that is waited for. */
    record WaitingFor(String check, Role by) {
    }

    ObviousState(Plan plan) {
        this.plan = plan;
    }

    void say(String line) {
        story.add(line);
    }

    void note(String what, String about) {
        log.add(what, about, now, sitting);
    }

    // ---- the place

    boolean makingSafe() {
        return stage == plan.stages().size();
    }

    Stage here() {
        return makingSafe() ? plan.makeSafe() : plan.stages().get(stage);
    }

    List<Action> actions() {
        return ((WorkStage) here()).steps().get(step).actions();
    }

    Action current() {
        return actions().get(action);
    }

    String stepName() {
        return here() instanceof WorkStage w ? w.steps().get(step).name() : "";
    }

    /** The current action and the expectations that run together with it. */
    List<Action> group() {
        int end = action + 1;
        while (current() instanceof Action.Expect && end < actions().size() && actions().get(end) instanceof Action.Expect) {
            end++;
        }
        return actions().subList(action, end);
    }
}
