package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.energise;
import static org.benchwright.engine.tests.Parts.expect;
import static org.benchwright.engine.tests.Parts.mark;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.release;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.withHazard;
import static org.benchwright.engine.tests.Parts.within;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Who has a test, which hazards they have read, and which unit they are at. */
class TakenOverTest {

    private static final Fact OVER = new Fact.TakenOver("QN");

    private static Plan twoSteps(SignalWord signal) {
        return PlanDraft.plan().hazard("mains", signal).stage("a", withHazard("mains", step("a1", confirm("x"))),
                withHazard("mains", step("a2", confirm("x"))), withHazard("mains", step("a3", release("r", Role.SECOND_PERSON, rejected("no"))))).build();
    }

    private static Walk walk(SignalWord signal) {
        return Walk.inShifts(twoSteps(signal));
    }

    @ParameterizedTest
    @EnumSource(SignalWord.class)
    void whoeverTakesOverReadsTheHazardsThemselves(SignalWord signal) {
        Walk walk = walk(signal).good().asks("a1.x").tell(OVER, Walk.OTHER_TECHNICIAN).asks("hazard.mains");
        assertTrue(walk.refusal(new Observation.Confirmed("x", true), Walk.OTHER_TECHNICIAN).contains("hazard.mains"));
        walk.tell(new Fact.HazardAcknowledged("mains"), Walk.OTHER_TECHNICIAN).asks("a1.x");
        assertEquals(Optional.of(Walk.OTHER_TECHNICIAN), walk.run().holder());
    }

    @Test
    void bothCountWhereWorkAndReleaseAreApart() {
        Walk walk = walk(SignalWord.NOTICE).good().tell(new Observation.Confirmed("x", true)).tell(OVER, Walk.OTHER_TECHNICIAN);
        walk.tell(new Fact.HazardAcknowledged("mains"), Walk.OTHER_TECHNICIAN).tell(new Observation.Confirmed("x", true), Walk.OTHER_TECHNICIAN)
                .asks("a3.r.release");
        for (String worked : new String[] {"QN", "TM"}) {
            String words = walk.refusal(new Fact.Released("r", new Actor(worked, Role.SECOND_PERSON), true), Walk.OTHER_TECHNICIAN);
            assertTrue(words.contains(worked), words);
        }
        walk.tell(new Fact.Released("r", new Actor("AB", Role.SECOND_PERSON), true), Walk.OTHER_TECHNICIAN);
    }

    @Test
    void oneCannotTakeOverFromOneselfOrFromSomebodyElse() {
        Walk walk = walk(SignalWord.NOTICE);
        assertEquals("This test is QN's: name them, and be somebody else, to take it over.", walk.refusal(OVER, Walk.TECHNICIAN));
        walk.refusal(new Fact.TakenOver("TM"), Walk.OTHER_TECHNICIAN);
        walk.tell(OVER, Walk.OTHER_TECHNICIAN);
        walk.refusal(OVER, Walk.OTHER_TECHNICIAN);
    }

    @Test
    void whoeverReleasedInItTakesNothingOver() {
        Plan plan = PlanDraft.plan().stage("a", step("a1", release("r", Role.SECOND_PERSON, rejected("no"))), step("a2", confirm("x"))).build();
        Walk walk = Walk.open(plan).tell(new Fact.Released("r", new Actor("TM", Role.SECOND_PERSON), true)).asks("a2.x");
        assertEquals("TM released something in this test, so somebody else has to carry it out.", walk.refusal(OVER, Walk.OTHER_TECHNICIAN));
        assertEquals(Optional.of(Walk.TECHNICIAN), walk.run().holder());
    }

    @Test
    void notWhileAToneIsAboutToSound() {
        Step lamp = step("a1", energise("supply"), mark("on"), expect("pwr", within("5 s", "on"), rejected("x")));
        Walk walk = Walk.open(PlanDraft.plan().stage("a", lamp).build()).until("a1.pwr.tone");
        assertEquals("A tone is about to sound. Take the test over after it.", walk.refusal(OVER, Walk.OTHER_TECHNICIAN));
        walk.good().tell(OVER, Walk.OTHER_TECHNICIAN).asks("a1.pwr");
    }

    @Test
    void theLastEntryOfSomebodyElseIsNotStruck() {
        Walk walk = walk(SignalWord.NOTICE).good().tell(new Observation.Confirmed("x", true));
        long entry = walk.run().strikeable().orElseThrow().sequence();
        walk.tell(OVER, Walk.OTHER_TECHNICIAN);
        assertTrue(walk.refusal(new Fact.Struck(entry), Walk.OTHER_TECHNICIAN).startsWith("Only the last entry can be struck"));
    }

    // ---- shifts

    @ParameterizedTest
    @EnumSource(value = SignalWord.class, names = "DANGER", mode = EnumSource.Mode.EXCLUDE)
    void theyAreReadAgainInTheNextShiftButNotInTheMidstOfAStep(SignalWord signal) {
        Walk walk = walk(signal).good().after("11 h").asks("a1.x").good().asks("a2.x");
        walk.after("2 h").tell(new Fact.Noted("Lunch.")).asks("a2.x").good().asks("hazard.mains");
    }

    /** As the records of earlier releases have it. */
    @Test
    void withoutAShiftTheyAreReadOnce() {
        Walk.open(twoSteps(SignalWord.NOTICE)).good().after("30 h").good().asks("a2.x").after("30 h").good().asks("a3.r.release");
    }

    @Test
    void whatWasReadInAnotherTestOfTheShiftNeedNotBeReadAgain() {
        Instant now = Walk.firstMoment().instant();
        walk(SignalWord.WARNING).tell(new Fact.HazardKnown("mains", "T-AAAAA-AAAAA", 4, now.minus(Duration.ofHours(12)))).asks("a1.x");
        Walk walk = walk(SignalWord.WARNING);
        Instant justTooLongAgo = now.minus(Duration.ofMillis(43_200_001));
        assertEquals("Hazard mains has to be read.", walk.refusal(new Fact.HazardKnown("mains", "T-AAAAA-AAAAA", 4, justTooLongAgo)));
        walk.refusal(new Fact.HazardKnown("mains", "T-AAAAA-AAAAA", 4, now.plusMillis(1)));
        walk.refusal(new Fact.HazardKnown("other", "T-AAAAA-AAAAA", 4, now));
    }

    @Test
    void aDangerIsAlwaysRead() {
        assertEquals("Hazard mains has to be read.",
                walk(SignalWord.DANGER).refusal(new Fact.HazardKnown("mains", "T-AAAAA-AAAAA", 4, Walk.firstMoment().instant())));
        Walk.open(twoSteps(SignalWord.NOTICE)).refusal(new Fact.HazardKnown("mains", "T-AAAAA-AAAAA", 4, Walk.firstMoment().instant()));
    }

    // ---- which unit, and where

    @Test
    void anotherUnitsPlateIsRefused() {
        Walk walk = walk(SignalWord.NOTICE).tell(new Fact.Identified("C16-004711"));
        assertEquals("That is C16-004712, and this test is of C16-004711. Go to the unit, or select its test.",
                walk.refusal(new Fact.Identified("C16-004712")));
    }

    @Test
    void aUnitHasThePositionThatItWasPutInLast() {
        Walk walk = walk(SignalWord.NOTICE);
        assertEquals(Optional.empty(), walk.run().position());
        walk.tell(new Fact.Placed("A 3")).tell(new Fact.Placed("B 12"));
        assertEquals(Optional.of("B 12"), walk.run().position());
        walk.refusal(new Fact.Placed(" "));
        walk.refusal(new Fact.Placed("A position that is much too long"));
    }

    @Test
    void neitherMakesTheLastEntryLast() {
        Walk walk = walk(SignalWord.NOTICE).good().tell(new Observation.Confirmed("x", true));
        long entry = walk.run().strikeable().orElseThrow().sequence();
        walk.tell(new Fact.Placed("A 3")).tell(new Fact.Identified("C16-004711")).tell(new Fact.Struck(entry)).asks("a1.x");
        assertEquals(Optional.of("A 3"), walk.run().position());
    }
}
