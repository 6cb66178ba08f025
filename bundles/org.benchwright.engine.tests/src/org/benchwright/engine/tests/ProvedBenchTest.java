package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

import org.benchwright.core.SignalWord;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.junit.jupiter.api.Test;

/** Where a procedure needs the bench proved, nothing is energised before it is. */
class ProvedBenchTest {

    private static final Instant START = Walk.firstMoment().instant();

    private static Plan plan(Step energising) {
        return PlanDraft.plan().hazard("mains", SignalWord.DANGER).needsBenchProved("12h")
                .stage("a", step("look", confirm("whole")), energising).build();
    }

    private static Walk atTheSwitch(Step energising) {
        return Walk.open(plan(energising)).good();
    }

    private static Fact proof(Duration ago, Duration valid) {
        return new Fact.BenchProved("T-AAAAA-AAAAA", 7, START.minus(ago), START.minus(ago).plus(valid));
    }

    private static void unproved(String refusal) {
        assertTrue(refusal.startsWith("Don't switch on: the bench was not proved with a known-good unit within the last 12 h."), refusal);
    }

    @Test
    void whatDoesNotEnergiseGoesOn() {
        atTheSwitch(step("on", energise("supply"), confirm("lit"))).asks("on.supply.on");
    }

    @Test
    void switchingOnWaitsForTheProof() {
        Walk walk = atTheSwitch(step("on", energise("supply"), confirm("lit")));
        assertEquals(Optional.of(Duration.ofHours(12)), walk.run().benchProofOwed(START));
        unproved(walk.refusal(new Fact.Switched("supply", true)));
        walk.tell(proof(Duration.ofHours(1), Duration.ofHours(24)));
        assertEquals(Optional.empty(), walk.run().benchProofOwed(START));
        walk.good().asks("on.lit");
    }

    @Test
    void soDoesAMarkThatIsPressedAsTheSwitchCloses() {
        Walk walk = atTheSwitch(step("on", energise("supply"), mark("closed"), confirm("lit"))).asks("on.closed");
        unproved(walk.refusal(new Fact.Marked("closed")));
        walk.tell(proof(Duration.ZERO, Duration.ofHours(1))).good().asks("on.lit");
    }

    @Test
    void andTheHazardThatIsReadBefore() {
        Walk walk = Walk.open(PlanDraft.plan().hazard("mains", SignalWord.DANGER).needsBenchProved("12h")
                .hazardStage("a", "mains", step("on", energise("supply"), confirm("lit"))).build()).asks("hazard.mains");
        unproved(walk.refusal(new Fact.HazardAcknowledged("mains")));
        walk.tell(proof(Duration.ZERO, Duration.ofHours(1))).good().asks("on.supply.on");
    }

    @Test
    void aProofAges() {
        Step on = step("on", energise("supply"), confirm("lit"));
        assertEquals("Test T-AAAAA-AAAAA does not prove the bench now.",
                atTheSwitch(on).refusal(proof(Duration.ofHours(12).plusMillis(1), Duration.ofHours(24))));
        atTheSwitch(on).refusal(proof(Duration.ofHours(2), Duration.ofHours(1)));
        atTheSwitch(on).refusal(proof(Duration.ofMillis(-1), Duration.ofHours(1)));
        atTheSwitch(on).tell(proof(Duration.ofHours(12), Duration.ofHours(12))).good().asks("on.lit");
        Walk late = atTheSwitch(on).tell(proof(Duration.ZERO, Duration.ofHours(24))).after("12h").after("1s");
        unproved(late.refusal(new Fact.Switched("supply", true)));
    }

    @Test
    void aRehearsalAndAProcedureThatAsksForNoneDoWithout() {
        Step on = step("on", energise("supply"), confirm("lit"));
        Walk.rehearse(plan(on)).good().good().asks("on.lit");
        Walk none = Walk.open(PlanDraft.plan().stage("a", on).build());
        none.refusal(proof(Duration.ZERO, Duration.ofHours(1)));
        none.good().asks("on.lit");
    }

    @Test
    void makingSafeWaitsForNobody() {
        Walk walk = atTheSwitch(step("on", energise("supply"), confirm("lit")));
        walk.tell(new Fact.Abandoned("Smoke.")).asks("off.supply.off").good();
    }
}
