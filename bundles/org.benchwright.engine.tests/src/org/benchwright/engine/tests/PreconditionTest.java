package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.step;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Precondition;
import org.junit.jupiter.api.Test;

/** Preconditions come before work, and again when they have aged. */
class PreconditionTest {

    private static PlanDraft draft() {
        return PlanDraft.plan().precondition("strap", "12 h").readingPrecondition("ambient", Parts.room())
                .stage("a", step("a1", confirm("x")), step("a2", confirm("x")));
    }

    private static Fact strap(boolean met, String text) {
        return new Observation.PreconditionAnswered("strap", met, text, Optional.empty());
    }

    private static Fact ambient(String degrees) {
        return new Observation.PreconditionAnswered("ambient", true, "", Optional.of(Quantity.of(degrees, "degC")));
    }

    @Test
    void theyAreAskedInTheirOrderBeforeTheFirstStep() {
        Walk walk = Walk.open(draft().build()).asks("precondition.strap");
        walk.refusal(ambient("20"));
        assertEquals("Nothing was entered. Enter something.", walk.refusal(strap(true, "")));
        walk.tell(strap(true, "7")).asks("precondition.ambient").tell(ambient("20")).asks("a1.x");
    }

    @Test
    void theInstrumentOfAReadingIsNamedFirst() {
        Precondition rail = new Precondition("rail", "The rail is there.", Optional.empty(), Optional.empty(), Optional.of(Parts.volts("23", "25")),
                Optional.of("meter"));
        Walk walk = Walk.open(PlanDraft.plan().precondition(rail).stage("a", step("a1", confirm("x"))).build()).asks("instrument.meter").good();
        walk.asks("precondition.rail");
        walk.tell(new Observation.PreconditionAnswered("rail", true, "", Optional.of(Quantity.of("24", "V")))).asks("a1.x");
    }

    @Test
    void anUnmetOneEndsTheTestAsThePlanSays() {
        Walk walk = Walk.open(draft().build()).tell(strap(false, "")).asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
        assertEquals("The procedure could not be carried out.", walk.run().reason());
        assertEquals(0, walk.all(Derived.StepOpened.class).stream().filter(o -> o.step().equals("a1")).count());
    }

    @Test
    void aReadingOutsideItsLimitsIsUnmetWhateverIsSaid() {
        Walk walk = Walk.open(draft().build()).tell(strap(true, "7")).tell(ambient("28.1")).asks("off.supply.off");
        assertEquals("The procedure could not be carried out.", walk.run().reason());
        Walk.open(draft().build()).tell(strap(true, "7")).tell(ambient("28")).asks("a1.x");
    }

    @Test
    void aReadingIsNeededAndMustBeOfItsKind() {
        Walk walk = Walk.open(draft().build()).tell(strap(true, "7"));
        walk.refusal(new Observation.PreconditionAnswered("ambient", true, "", Optional.empty()));
        walk.refusal(new Observation.PreconditionAnswered("ambient", true, "", Optional.of(Quantity.of("20", "V"))));
    }

    @Test
    void oneThatHasAgedIsAskedAgainBeforeTheNextStep() {
        Walk walk = Walk.open(draft().build()).until("a1.x").after("12 h").good().asks("a2.x");
        assertEquals(0, walk.count(Derived.PreconditionExpired.class));
        Walk aged = Walk.open(draft().build()).until("a1.x").after("12 h 1 s").good().asks("precondition.strap");
        assertEquals(List.of(new Derived.PreconditionExpired("strap")), aged.all(Derived.PreconditionExpired.class));
        aged.good().asks("a2.x");
    }

    @Test
    void theyAgeByTheTestsOwnTimeNotByAWallClockThatSomebodySets() {
        Walk.open(draft().build()).until("a1.x").stepWallClock(Duration.ofHours(24)).good().asks("a2.x");
        Walk.open(draft().build()).until("a1.x").stepWallClock(Duration.ofHours(-24)).after("13 h").good().asks("precondition.strap");
    }

    @Test
    void timeBetweenTwoSittingsAgesThemInTheMidstOfAStepToo() {
        Walk walk = Walk.open(draft().build()).until("a1.x").interrupt("13 h").asks("precondition.strap").good().asks("a1.x");
        assertEquals(1, walk.all(Derived.StepOpened.class).stream().filter(o -> o.step().equals("a1")).count());
        Walk.open(draft().build()).until("a1.x").interrupt("11 h").asks("a1.x");
    }

    @Test
    void anAgedOneThatIsNotMetAnyMoreEndsTheTestInTheMidstOfAStep() {
        Walk walk = Walk.open(draft().build()).until("a1.x").interrupt("13 h").tell(strap(false, "")).asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.UNDECIDED), walk.run().verdict());
    }

    @Test
    void makeSafeAsksForNone() {
        Walk walk = Walk.open(draft().build()).until("a1.x").tell(new Observation.Confirmed("x", false)).asks("off.supply.off").after("24 h");
        walk.interrupt("24 h").asks("off.supply.off").good();
        assertEquals(Optional.of(Verdict.REJECTED), walk.run().verdict());
    }

    @Test
    void aSoakIsNotHeldUpByOneThatAgesDuringIt() {
        Walk walk = Walk.open(PlanDraft.plan().precondition("strap", "12 h").stage("a", step("on", energise("supply")))
                .soak("endurance", rejected("stopped"), rejected("stopped"), Optional.empty()).stage("b", step("b1", confirm("x"))).build());
        walk.until("endurance.look").good().asks("endurance.look").good().good().asks("precondition.strap").good().asks("b1.x");
    }
}
