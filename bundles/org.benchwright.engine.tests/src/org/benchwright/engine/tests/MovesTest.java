package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.compare;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.end;
import static org.benchwright.engine.tests.Parts.faultLog;
import static org.benchwright.engine.tests.Parts.go;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Move;
import org.junit.jupiter.api.Test;

/** Where checks lead, and from stage to stage. */
class MovesTest {

    private static final Fact DIFFERENT = new Observation.Compared("same", "C16-2DC", "C16-2AC");

    @Test
    void stagesAndStepsComeInTheirOrderAndTheEndIsThePlans() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x")), step("a2", confirm("x")))
                .onDemand("log", step("l1", faultLog("lines"))).stage("b", step("b1", confirm("x"))).build());
        walk.asks("a1.x").good().asks("a2.x").good().asks("b1.x").good().asks("off.supply.off").good().asks("end");
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
        assertEquals("Every step conforms.", walk.run().reason());
        assertEquals(List.of("a1", "a2", "b1", "off"), walk.all(Derived.StepOpened.class).stream().map(Derived.StepOpened::step).toList());
    }

    @Test
    void aMoveBackIsBoundedThenComesWhatStandsInstead() {
        Move back = goTo("a", "matched", 2, undecided("Configuration does not fit the unit."));
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("matched", compare("same", back))).build());
        walk.tell(DIFFERENT).asks("matched.same").tell(DIFFERENT).asks("matched.same").tell(DIFFERENT).asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
        assertEquals("Configuration does not fit the unit.", walk.run().reason());
        assertEquals(2, walk.count(Derived.Moved.class));
        assertEquals(List.of(1, 2, 3, 1), walk.all(Derived.StepOpened.class).stream().map(Derived.StepOpened::visit).toList());
    }

    @Test
    void theBoundOfOneCheckIsNotUsedUpByAnother() {
        Move end = undecided("gave up");
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("start", confirm("ready")),
                step("both", confirm("x", goTo("a", "start", 1, end)), confirm("y", goTo("a", "start", 1, end)))).build());
        walk.good().tell(new Observation.Confirmed("x", false)).asks("start.ready").good().good().tell(new Observation.Confirmed("y", false));
        walk.asks("start.ready").good().good().tell(new Observation.Confirmed("y", false)).asks("off.supply.off");
    }

    @Test
    void whatStandsInsteadMayBeAnotherBoundedMove() {
        Move twoWays = goTo("a", "one", 1, goTo("a", "two", 1, rejected("both ways are used up")));
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("one", confirm("x")), step("two", confirm("x", twoWays))).build());
        Fact no = new Observation.Confirmed("x", false);
        walk.good().tell(no).asks("one.x").good().tell(no).asks("two.x").tell(no).asks("off.supply.off");
        assertEquals("both ways are used up", walk.run().reason());
    }

    @Test
    void aStageOnDemandIsEnteredByAMoveOnlyAndConcludes() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("runs", goTo("log", "l1"))))
                .onDemand("log", step("l1", faultLog("lines"), end("stop", rejected("Never started.")))).build());
        walk.tell(new Observation.Confirmed("runs", false)).asks("l1.lines").good().asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.REJECTED), walk.run().verdict());
        assertEquals("Never started.", walk.run().reason());
    }

    @Test
    void aStageOnDemandThatConcludesNothingLeavesTheTestUndecided() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("runs", goTo("log", "l1"))))
                .onDemand("log", step("l1", faultLog("lines"))).stage("b", step("b1", confirm("x"))).build());
        walk.tell(new Observation.Confirmed("runs", false)).good().asks("off.supply.off");
        assertEquals("Stage \"Stage log\" ended without a conclusion.", walk.run().reason());
    }

    @Test
    void aStepMayConcludeOrGoElsewhereByItself() {
        Walk concluded = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x"), end("stop", Parts.accepted()), confirm("never")),
                step("a2", confirm("x"))).build()).good().asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.ACCEPTED), concluded.run().verdict());
        Walk gone = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x"), go("on", goTo("b", "b1"))), step("a2", confirm("x")))
                .stage("b", step("b1", confirm("x"))).build());
        gone.good().asks("b1.x");
        assertEquals(Outcome.CONFORMS, gone.last(Derived.StepDecided.class).outcome());
    }

    @Test
    void goingBackByItselfIsBoundedToo() {
        Walk walk = Walk.open(PlanDraft.plan()
                .stage("a", step("a1", confirm("x"), go("again", goTo("a", "a1", 2, undecided("three times is enough"))))).build());
        walk.good().good().good().asks("off.supply.off");
        assertEquals("three times is enough", walk.run().reason());
    }

    // ---- a time limit of a stage

    @Test
    void aStageThatTookTooLongIsADepartureHoweverItIsLeft() {
        PlanDraft draft = PlanDraft.plan().timedStage("power_up", "10 min", step("p1", confirm("x", rejected("dead"))))
                .stage("next", step("n1", confirm("x")));
        Walk done = Walk.open(draft.build()).after("10 min 1 s").good().asks("n1.x");
        assertEquals(List.of(DepartureKind.LATE_STAGE), done.departures());
        Walk failed = Walk.open(draft.build()).after("10 min 1 s").tell(new Observation.Confirmed("x", false));
        assertEquals(List.of(DepartureKind.LATE_STAGE), failed.departures());
        Walk abandoned = Walk.open(draft.build()).after("10 min 1 s").tell(new Fact.Abandoned("fire drill"));
        assertEquals(List.of(DepartureKind.ABANDONED, DepartureKind.LATE_STAGE), abandoned.departures());
        Walk intime = Walk.open(draft.build()).after("10 min").good().asks("n1.x").after("1 h").good();
        assertEquals(List.of(), intime.departures());
    }

    // ---- releases of failures

    @Test
    void aRefusedReleaseOfAFailureEndsTheTestUndecided() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", confirm("x", releaseBy(Role.SUPERVISOR)))).build());
        walk.tell(new Observation.Confirmed("x", false)).asks("a1.x.release").tell(new Fact.Released("x", Walk.SUPERVISOR, false));
        walk.asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
        assertEquals("not so: It is so: x.; release refused by SV", walk.run().reason());
    }
}
