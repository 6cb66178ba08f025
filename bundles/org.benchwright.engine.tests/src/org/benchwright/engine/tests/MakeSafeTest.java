package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Answers.volts;
import static org.benchwright.engine.tests.Parts.accepted;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.end;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.expect;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.isolate;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.pause;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.benchwright.engine.tests.Parts.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;

/** Make safe is carried out before every end, and nothing is live after it. */
class MakeSafeTest {

    private static PlanDraft draft() {
        return PlanDraft.plan().stage("a", step("on", energise("supply"), confirm("runs", rejected("stopped"))),
                step("close", confirm("clear", undecided("too close"))))
                .makeSafe(step("off", isolate("supply")), step("drain", pause("wait", "5 min"),
                        measure("residual", DecisionRule.SIMPLE, releaseBy(Role.SUPERVISOR), undecided("x"))));
    }

    private static Walk live() {
        return Walk.open(draft().build()).until("on.runs");
    }

    private static void endsSafely(Walk walk, Verdict verdict) {
        walk.asks("off.supply.off").until("end");
        assertEquals(Optional.of(verdict), walk.run().verdict());
        assertEquals(Set.of(), walk.run().live());
        List<String> kinds = walk.kinds();
        assertEquals(List.of("MadeSafe", "Concluded"), kinds.subList(kinds.size() - 2, kinds.size()));
        assertTrue(kinds.indexOf("ConclusionReached") < kinds.lastIndexOf("Switched"));
    }

    @Test
    void beforeAccepted() {
        endsSafely(live().good().good(), Verdict.ACCEPTED);
    }

    @Test
    void beforeRejected() {
        endsSafely(live().tell(new Observation.Confirmed("runs", false)), Verdict.REJECTED);
    }

    @Test
    void beforeUndecided() {
        endsSafely(live().good().tell(new Observation.Confirmed("clear", false)), Verdict.UNDECIDED);
    }

    @Test
    void beforeAnAbandonedTestEnds() {
        Walk walk = live().tell(new Fact.Abandoned("fire drill"));
        assertEquals("Ended early by the technician: fire drill", walk.run().reason());
        assertEquals(List.of(DepartureKind.ABANDONED), walk.departures());
        endsSafely(walk, Verdict.UNDECIDED);
    }

    @Test
    void theKeyWorksEverywhereButNeedsAReason() {
        Fact key = new Fact.Abandoned("fire drill");
        Walk walk = Walk.open(PlanDraft.plan().precondition("strap").stage("a", step("a1", confirm("x"))).build()).asks("precondition.strap");
        assertEquals("A reason is needed. Enter it.", walk.refusal(new Fact.Abandoned(" ")));
        walk.tell(key).asks("off.supply.off");
        live().interrupt("1 h").asks("power").tell(key).asks("off.supply.off");
        Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x", releaseBy(Role.SUPERVISOR)))).build())
                .tell(new Observation.Confirmed("x", false)).asks("a1.x.release").tell(key).asks("off.supply.off");
    }

    @Test
    void itIsNotLeftByItsOwnKey() {
        Walk walk = live().tell(new Fact.Abandoned("fire drill"));
        assertEquals("The unit is being made safe already. Go on.", walk.refusal(new Fact.Abandoned("again")));
    }

    @Test
    void aCheckThatFailsInItWaitsForSomebodyEntitled() {
        Walk walk = live().tell(new Fact.Abandoned("fire drill")).until("drain.residual").tell(volts("residual", "230"));
        walk.asks("drain.residual.release");
        walk.refusal(new Fact.Released("residual", Walk.SECOND, true));
        // A refusal changes nothing: the unit stays in somebody's hands until it is safe.
        walk.tell(new Fact.Released("residual", Walk.SUPERVISOR, false)).asks("drain.residual.release");
        walk.tell(new Fact.Released("residual", Walk.SUPERVISOR, true)).asks("end");
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
    }

    @Test
    void aConclusionWithinItIsAReleaseToo() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x")))
                .makeSafe(step("off", isolate("supply"), confirm("dead", rejected("live"))), step("tag", confirm("fitted"))).build());
        walk.good().good().tell(new Observation.Confirmed("dead", false)).asks("off.dead.release");
        walk.refusal(new Fact.Released("dead", Walk.SECOND, true));
        walk.good().asks("tag.fitted").good();
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
    }

    @Test
    void whatNobodyCouldSeeInItWaitsForSomebodyEntitledAsWell() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x"))).makeSafe(step("off", isolate("supply"), mark("off"),
                expect("pwr", within("2 s", "off"), rejected("lit")))).build()).good();
        for (int i = 0; i < 4; i++) {
            walk.until("off.pwr").tell(new Observation.Seen("pwr", Sight.NOT_LOOKING, ""));
        }
        walk.asks("off..release").good().asks("end");
    }

    @Test
    void itMayGoBackWithinItself() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x"))).makeSafe(step("off", isolate("supply")),
                step("drain", confirm("dead", goTo("make_safe", "off", 1, rejected("charged"))))).build());
        walk.good().asks("off.supply.off").good().tell(new Observation.Confirmed("dead", false)).asks("off.supply.off").good();
        walk.tell(new Observation.Confirmed("dead", false)).asks("drain.dead.release").good().asks("end");
    }

    @Test
    void whatItsStepsDoNotIsolateIsSwitchedOffBeforeThem() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("on", energise("supply"), energise("load"), confirm("x"))).build());
        walk.until("on.x").good().asks("off.load.off").good().asks("off.supply.off").good().asks("end");
    }

    @Test
    void whatAMoveSkippedIsSwitchedOffAfterThem() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("on", energise("supply"), confirm("x")))
                .makeSafe(step("plug", confirm("reach", goTo("make_safe", "tag"))), step("off", isolate("supply")), step("tag", confirm("fitted")))
                .build());
        walk.until("plug.reach").tell(new Observation.Confirmed("reach", false)).asks("tag.fitted").good();
        assertEquals(0, walk.count(Derived.MadeSafe.class));
        walk.asks("tag.supply.off").good().asks("end");
        assertEquals(Set.of(), walk.run().live());
    }

    @Test
    void anInterruptionInItStartsItAgainUnlessPowerIsKnownToHaveBeenKept() {
        Walk lost = live().tell(new Fact.Abandoned("fire drill")).asks("off.supply.off").interrupt("1 h").asks("power");
        lost.tell(new Fact.PowerAnswered(false)).asks("off.supply.off").until("end");
        Walk off = live().tell(new Fact.Abandoned("fire drill")).good().asks("drain.wait").after("4 min").interrupt("1 h").asks("drain.wait");
        off.refusal(new Fact.WaitElapsed("wait"));
        off.after("5 min").tell(new Fact.WaitElapsed("wait"));
    }

    @Test
    void aTestThatEndsByItselfHasItToo() {
        endsSafely(Walk.open(PlanDraft.plan().stage("a", step("on", energise("supply"), end("stop", accepted()))).build()).good(), Verdict.ACCEPTED);
    }

    @Test
    void nothingIsTakenAfterTheEnd() {
        Walk walk = live().good().good().until("end");
        assertEquals("This test has ended. Add an amendment instead.", walk.refusal(new Fact.Noted("late thought")));
        walk.refusal(new Fact.Abandoned("x"));
        walk.refusal(new Fact.Switched("supply", true));
    }
}
