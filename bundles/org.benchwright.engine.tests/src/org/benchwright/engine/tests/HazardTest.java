package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.withHazard;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.SignalWord;
import org.benchwright.engine.event.Observation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Hazards are shown before the step that needs them: danger each time, the others once. */
class HazardTest {

    private static Walk twoSteps(SignalWord signal) {
        return Walk.open(PlanDraft.plan().hazard("mains", signal).stage("a", withHazard("mains", step("a1", confirm("x"))),
                step("a2", confirm("x")), withHazard("mains", step("a3", confirm("x", goTo("a", "a3", 1, rejected("bad")))))).build());
    }

    @Test
    void dangerIsShownBeforeEveryVisitOfAStep() {
        Walk walk = twoSteps(SignalWord.DANGER).asks("hazard.mains").good().asks("a1.x").good().asks("a2.x").good();
        walk.asks("hazard.mains").good().asks("a3.x").tell(new Observation.Confirmed("x", false)).asks("hazard.mains").good().asks("a3.x");
    }

    @ParameterizedTest
    @EnumSource(value = SignalWord.class, names = "DANGER", mode = EnumSource.Mode.EXCLUDE)
    void theOthersAreShownOnce(SignalWord signal) {
        Walk walk = twoSteps(signal).asks("hazard.mains").good().asks("a1.x").good().asks("a2.x").good();
        walk.asks("a3.x").tell(new Observation.Confirmed("x", false)).asks("a3.x");
    }

    @Test
    void aStagesHazardIsShownBeforeItsSteps() {
        Walk walk = Walk.open(PlanDraft.plan().hazard("outputs", SignalWord.WARNING).hazard("mains", SignalWord.DANGER)
                .hazardStage("a", "mains", step("a1", confirm("x")), withHazard("outputs", step("a2", confirm("x")))).build());
        walk.asks("hazard.mains").good().asks("a1.x").good().asks("hazard.mains").good().asks("hazard.outputs").good().asks("a2.x");
    }

    @Test
    void makeSafeShowsItsHazardsToo() {
        Walk walk = Walk.open(PlanDraft.plan().hazard("charge", SignalWord.DANGER).stage("a", step("a1", confirm("x")))
                .makeSafe(withHazard("charge", step("off", Parts.isolate("supply"), confirm("dead", rejected("live"))))).build());
        walk.good().asks("hazard.charge").good().asks("off.supply.off");
    }

    @Test
    void afterAnInterruptionTheyAreShownAgainInTheMidstOfAStep() {
        for (SignalWord signal : SignalWord.values()) {
            Walk walk = twoSteps(signal).good().asks("a1.x").interrupt("2 min").asks("hazard.mains");
            walk.refusal(new Observation.Confirmed("x", true));
            walk.good().asks("a1.x");
        }
    }

    @Test
    void aSoakShowsItsHazardsBeforeItBegins() {
        Walk walk = Walk.open(PlanDraft.plan().hazard("fire", SignalWord.WARNING).stage(PlanDraft.soakStage("endurance", Duration.ofHours(72),
                List.of("fire"), Optional.empty(), rejected("stopped"), rejected("stopped"))).build());
        walk.asks("hazard.fire").good().asks("endurance.begin").good().asks("endurance.look").interrupt("10 h").asks("power").good();
        walk.asks("hazard.fire").good().asks("endurance.look");
    }
}
