package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Answers.volts;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.goTo;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.measure;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.text;
import static org.benchwright.engine.tests.Parts.undecided;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;

/** A slip is struck, until the next observation; it stays readable. */
class StrikeTest {

    private static Walk reading() {
        return Walk.open(PlanDraft.plan().hazard("mains", SignalWord.DANGER)
                .stage("a", step("supply", measure("v", DecisionRule.SIMPLE, rejected("bad"), undecided("x"))),
                        Parts.withHazard("mains", step("next", confirm("ok"))))
                .build()).until("supply.v");
    }

    private static Fact strike(Walk walk) {
        return new Fact.Struck(walk.run().strikeable().map(TestEvent::sequence).orElse(-1L));
    }

    @Test
    void aStruckReadingIsAskedAgainAndStaysOnRecord() {
        Walk walk = reading().tell(volts("v", "42.1")).asks("off.supply.off");
        assertEquals("bad", walk.run().reason());
        walk.strike().asks("supply.v");
        assertEquals("", walk.run().reason());
        assertEquals(Optional.empty(), walk.run().strikeable());
        walk.tell(volts("v", "24.1")).asks("hazard.mains");
        assertEquals(2, walk.count(Observation.Measured.class));
        walk.until("end");
        assertEquals(Optional.of(Verdict.ACCEPTED), walk.run().verdict());
    }

    @Test
    void whatFollowedFromASlipDoesNotHoldButAClockThatWasStepped() {
        Walk walk = reading().tell(volts("v", "24.1")).stepWallClock(Duration.ofHours(1)).good().asks("next.ok");
        assertEquals(2, holding(walk, Derived.StepOpened.class));
        walk.strike();
        assertEquals(1, holding(walk, Derived.StepOpened.class));
        assertEquals(0, holding(walk, Derived.CheckDecided.class));
        assertEquals(1, holding(walk, Fact.HazardAcknowledged.class));
        assertEquals(1, holding(walk, Derived.DepartureNoted.class));
        walk.until("next.ok");
        assertEquals(2, holding(walk, Derived.StepOpened.class));
        assertEquals(1, holding(walk, Derived.CheckDecided.class));
    }

    private static long holding(Walk walk, Class<?> kind) {
        return walk.run().holding().stream().filter(event -> kind.isInstance(event.body())).count();
    }

    @Test
    void onlyTheLastObservationCanBeStruck() {
        Walk walk = reading().tell(volts("v", "24.1"));
        Fact first = strike(walk);
        walk.good().asks("next.ok").good();
        assertEquals("Only the last entry can be struck, and only until something else is done. Add a note instead.", walk.refusal(first));
    }

    @Test
    void aNoteOrAHazardReadInBetweenDoesNotSealIt() {
        Walk walk = reading().tell(volts("v", "24.1"));
        Fact strike = strike(walk);
        walk.tell(new Fact.Noted("Slip?")).good().asks("next.ok").tell(strike).asks("supply.v");
        walk.good().asks("hazard.mains");
    }

    @Test
    void whatWasDoneSealsIt() {
        Walk walk = reading().tell(volts("v", "42.1"));
        Fact strike = strike(walk);
        walk.good();
        walk.refusal(strike);
    }

    @Test
    void anInterruptionSealsIt() {
        Walk walk = reading().tell(volts("v", "24.1"));
        Fact strike = strike(walk);
        walk.interrupt("1 min");
        walk.refusal(strike);
    }

    @Test
    void aStruckRepeatIsNotCounted() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", text("t")),
                step("a2", confirm("x", goTo("a", "a1", 1, rejected("twice"))))).build());
        walk.good().tell(new Observation.Confirmed("x", false)).asks("a1.t");
        walk.strike().asks("a2.x").tell(new Observation.Confirmed("x", false)).asks("a1.t");
        walk.good().tell(new Observation.Confirmed("x", false)).asks("off.supply.off");
    }

    @Test
    void whatMayHaveBeenSwitchedOnMeanwhileStaysLive() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", text("t")), step("on", energise("supply"), mark("closed"), confirm("x")))
                .build()).good().asks("on.closed");
        walk.strike().asks("a1.t");
        assertEquals(Set.of("supply"), walk.run().live());
        walk.good().asks("on.supply.off").good().asks("on.closed");
    }

    @Test
    void whoeverWroteTheSlipHasWorkedOnTheTest() {
        Walk walk = Walk.open(PlanDraft.plan().stage("a", step("a1", text("t"), Parts.release("bare", Role.SECOND_PERSON, rejected("x"))))
                .build());
        Actor turned = new Actor(Walk.OTHER_TECHNICIAN.id(), Role.SECOND_PERSON);
        walk.tell(new Observation.TextEntered("t", "nonsense"), Walk.OTHER_TECHNICIAN);
        walk.strike().good().asks("a1.bare.release");
        walk.refusal(new Fact.Released("bare", turned, true));
    }
}
