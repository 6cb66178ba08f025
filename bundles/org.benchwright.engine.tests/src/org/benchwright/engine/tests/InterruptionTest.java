package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Answers.volts;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.expect;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.isolate;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.measureAgain;
import static org.benchwright.engine.tests.Parts.pause;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.text;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.benchwright.engine.tests.Parts.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.ToneGiven.Tone;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.evidence.Combination;
import org.junit.jupiter.api.Test;

/** Going on after the process died, the lid was closed, or the power went. */
class InterruptionTest {

    private static final Fact LOST = new Fact.PowerAnswered(false);
    private static final Fact KEPT = new Fact.PowerAnswered(true);

    /** Fit cold, switch on, work live in a later stage. */
    private static PlanDraft draft() {
        return PlanDraft.plan().precondition("strap", "12 h")
                .stage("prepare", step("fit", confirm("fitted")))
                .stage("power_up", step("lamps", energise("supply"), mark("on"), expect("pwr", within("2 s", "on"), rejected("dark"))))
                .stage("work", step("check", confirm("runs")), step("load", text("t"), confirm("done")));
    }

    private static Walk at(String key) {
        return Walk.open(draft().build()).until(key);
    }

    @Test
    void aSittingCanOnlyBeFollowedByTheNext() {
        Walk walk = at("check.runs");
        Moment now = walk.moment();
        for (int sitting : List.of(0, 1, 3)) {
            Moment wrong = new Moment(now.instant(), sitting, Duration.ZERO);
            assertThrows(RefusedException.class, () -> walk.run().record(new Fact.Interrupted(Duration.ZERO), Walk.BENCH, wrong));
        }
        Moment elsewhere = new Moment(now.instant(), 2, now.offset());
        assertThrows(RefusedException.class, () -> walk.run().record(new Observation.Confirmed("runs", true), Walk.TECHNICIAN, elsewhere));
    }

    @Test
    void withNothingLiveItGoesOnWhereItWas() {
        Walk walk = at("fit.fitted").interrupt("8 h").asks("fit.fitted");
        assertEquals(List.of(DepartureKind.INTERRUPTED), walk.departures());
        assertEquals("work stood still for 8 h in step fit", walk.last(Derived.DepartureNoted.class).words());
    }

    @Test
    void withSomethingLiveItAsksAboutPowerFirst() {
        Walk walk = at("check.runs").interrupt("1 min").asks("power");
        walk.refusal(new Observation.Confirmed("runs", true));
        walk.tell(KEPT).asks("check.runs");
        assertEquals(Set.of("supply"), walk.run().live());
    }

    @Test
    void afterALossOfPowerEverythingIsSwitchedOffThenPreconditionsAndPowerUpComeAgain() {
        Walk walk = at("load.done").interrupt("1 min").tell(LOST).asks("lamps.supply.off");
        assertEquals(Set.of("supply"), walk.run().live(), "nobody knows where the switch stands");
        walk.good().asks("precondition.strap").good().asks("lamps.on");
        walk.until("load.t").good().asks("load.done").until("end");
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
    }

    @Test
    void powerUpIsTheStepLastOpenedWithEverythingIsolated() {
        Walk walk = Walk.open(PlanDraft.plan().stage("bench", step("probe", energise("supply"), confirm("24 V"), isolate("supply")))
                .stage("power_up", step("fit", confirm("x")), step("on", energise("supply"), confirm("lit")), step("more", energise("load"),
                        confirm("x")))
                .stage("work", step("check", confirm("x"))).build()).until("check.x");
        walk.interrupt("1 min").tell(LOST).asks("on.supply.off").good().asks("on.load.off").good().asks("on.supply.on").good().good();
        walk.asks("more.load.on");
    }

    @Test
    void anInterruptionWithinPowerUpGoesBackToItsBeginning() {
        Walk walk = at("lamps.pwr").interrupt("1 s").tell(LOST).asks("lamps.supply.off").good().asks("precondition.strap").good();
        walk.asks("lamps.on");
        assertEquals(2, walk.last(Derived.StepOpened.class).visit());
    }

    @Test
    void aSecondInterruptionBeforeTheAnswerAsksAgain() {
        Walk walk = at("check.runs").interrupt("1 min").asks("power").interrupt("1 min").asks("power").tell(LOST).asks("lamps.supply.off");
        walk.interrupt("1 min").asks("power").tell(KEPT).asks("lamps.supply.off");
    }

    // ---- what was timed

    @Test
    void runningDeadlinesAreVoidAndTheStepIsRepeated() {
        for (String where : List.of("lamps.pwr.tone", "lamps.pwr")) {
            Walk walk = at(where).interrupt("1 s").tell(KEPT).asks("lamps.supply.off");
            assertEquals(List.of(DepartureKind.INTERRUPTED, DepartureKind.REPEATED), walk.departures());
            assertEquals("work was interrupted while a deadline was running", walk.last(Derived.Repeated.class).reason());
            walk.good().asks("lamps.on");
        }
    }

    @Test
    void aMarkNotPressedYetTimesNothing() {
        Walk walk = at("lamps.on").interrupt("1 s").tell(KEPT).asks("lamps.on");
        assertEquals(0, walk.count(Derived.Repeated.class));
    }

    @Test
    void deadlinesAreVoidedThreeTimesThenTheTestIsUndecided() {
        Walk walk = at("lamps.pwr.tone");
        for (int i = 0; i < 3; i++) {
            walk.interrupt("1 s").tell(KEPT).until("lamps.pwr.tone");
        }
        walk.interrupt("1 s").tell(KEPT).asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
    }

    @Test
    void aWaitBeginsAgain() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("cool", pause("wait", "5 min"))).build()).after("4 min").interrupt("1 h");
        assertEquals(2, walk.count(Derived.WaitBegan.class));
        walk.refusal(new Fact.WaitElapsed("wait"));
        walk.after("5 min").tell(new Fact.WaitElapsed("wait"));
    }

    @Test
    void aDeadlineBehindARunningReleaseIsVoidToo() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("turn", mark("turned"), confirm("quiet", releaseBy(Role.SUPERVISOR)),
                expect("run", within("30 s", "turned"), rejected("never ran")))).build());
        walk.good().tell(new Observation.Confirmed("quiet", false)).asks("turn.quiet.release").interrupt("30 s").asks("turn.quiet.release").good();
        walk.asks("turn.run.tone").tell(new Fact.ToneGiven("run", Tone.OPENS)).asks("turn.turned");
        assertTrue(walk.departures().contains(DepartureKind.REPEATED));
    }

    // ---- other demands

    @Test
    void everyOtherDemandIsAskedAgainAsItWas() {
        Walk measured = Walk.open(PlanDraft.plan()
                .stage("a", step("supply", measureAgain("v", 1, Combination.MEAN, rejected("bad"), undecided("close")))).build());
        measured.asks("instrument.meter").interrupt("1 min").asks("instrument.meter").good().interrupt("1 min").asks("supply.v");
        measured.tell(volts("v", "24.5")).asks("supply.v.reason").interrupt("1 min").asks("supply.v.reason").good();
        measured.tell(volts("v", "24.3")).asks("off.supply.off").interrupt("1 min").asks("off.supply.off");
        Walk before = Walk.open(draft().build()).asks("precondition.strap").interrupt("1 min").asks("precondition.strap");
        assertEquals(List.of(), before.departures());
    }

    @Test
    void aMoveAfterALossOfPowerIsCountedAgainstNothing() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("on", energise("supply"), confirm("lit", goTo("a", "on", 1, rejected("dark")))))
                .build()).until("on.lit");
        walk.interrupt("1 s").tell(LOST).until("on.lit").interrupt("1 s").tell(LOST).until("on.lit");
        walk.tell(new Observation.Confirmed("lit", false)).asks("on.supply.off").until("on.lit").tell(new Observation.Confirmed("lit", false));
        walk.asks("off.supply.off");
    }

    /** A lamp that has to go out with the supply proves nothing the second time if the supply is off before the step begins. */
    @Test
    void aStepThatSwitchedOffWhatItBeganWithIsNotRepeatedDead() {
        PlanDraft dark = draft().stage("dark", step("halt", isolate("supply"), mark("halted"),
                expect("ok", within("2 s", "halted"), rejected("stays lit"))));
        for (Fact voiding : List.of(new Fact.Interrupted(Duration.ZERO), new Observation.Seen("ok", Observation.Sight.NOT_LOOKING, ""))) {
            Walk walk = Walk.open(dark.build()).until("halt.ok");
            if (voiding instanceof Fact.Interrupted) {
                walk.interrupt("1 s");
            } else {
                walk.tell(voiding);
            }
            walk.until("lamps.on");
            assertEquals(Set.of("supply"), walk.run().live());
            assertEquals("lamps", walk.last(Derived.Moved.class).step());
            assertEquals(Verdict.ACCEPTED, walk.until("end").run().verdict().orElseThrow());
        }
    }
}
