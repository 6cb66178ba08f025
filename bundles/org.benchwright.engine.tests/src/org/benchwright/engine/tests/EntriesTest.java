package org.benchwright.engine.tests;

import static org.benchwright.engine.tests.Parts.apply;
import static org.benchwright.engine.tests.Parts.attach;
import static org.benchwright.engine.tests.Parts.choose;
import static org.benchwright.engine.tests.Parts.compare;
import static org.benchwright.engine.tests.Parts.confirm;
import static org.benchwright.engine.tests.Parts.faultLog;
import static org.benchwright.engine.tests.Parts.item;
import static org.benchwright.engine.tests.Parts.pause;
import static org.benchwright.engine.tests.Parts.protectedItem;
import static org.benchwright.engine.tests.Parts.rejected;
import static org.benchwright.engine.tests.Parts.releaseBy;
import static org.benchwright.engine.tests.Parts.step;
import static org.benchwright.engine.tests.Parts.text;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;

import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.Demand;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.junit.jupiter.api.Test;

/** What is entered, confirmed, compared, attached, chosen, applied and waited for. */
class EntriesTest {

    private static final Move WRONG = rejected("wrong");

    private static Walk asking(Action... actions) {
        return Walk.open(PlanDraft.plan().stage("work", step("first", actions), step("next", confirm("ok"))).build());
    }

    @Test
    void textMustNotBeBlank() {
        Walk walk = asking(text("damage"));
        assertEquals("Nothing was entered. Enter something.", walk.refusal(new Observation.TextEntered("damage", " ")));
        walk.tell(new Observation.TextEntered("damage", "none")).asks("next.ok");
    }

    @Test
    void aFaultLogWithoutLinesIsAnAnswerALineWithoutCodeIsNot() {
        Walk walk = asking(faultLog("log"));
        walk.refusal(new Observation.FaultLogEntered("log", List.of(new Observation.FaultLine(" ", "07:12"))));
        walk.tell(new Observation.FaultLogEntered("log", List.of())).asks("next.ok");
    }

    @Test
    void comparedEntriesMayDifferInLetterCaseAndBlanks() {
        asking(compare("same", WRONG)).tell(new Observation.Compared("same", "C16-2 DC", "c16 -2dc")).asks("next.ok");
        Walk walk = asking(compare("same", WRONG)).tell(new Observation.Compared("same", "C16-2DC", "C16-2AC"));
        assertEquals("Type on the plate is C16-2DC, but Type configured is C16-2AC", walk.last(Derived.CheckDecided.class).words());
        walk.asks("off.supply.off");
        asking(compare("same", WRONG)).refusal(new Observation.Compared("same", "", ""));
    }

    @Test
    void anAttachmentHasANameAndNoFolder() {
        Walk walk = asking(attach("photo"));
        Digest digest = Digest.of("photo".getBytes(StandardCharsets.UTF_8));
        for (String name : List.of("", "../plate.jpg", "C:\\plate.jpg", "plate\n.jpg")) {
            walk.refusal(new Observation.Attached("photo", digest, name));
        }
        walk.tell(new Observation.Attached("photo", digest, "plate.jpg")).asks("next.ok");
    }

    @Test
    void aDeniedStatementLeadsWhereThePlanSays() {
        Walk walk = asking(confirm("ok", WRONG)).tell(new Observation.Confirmed("ok", false));
        assertEquals("wrong", walk.asks("off.supply.off").run().reason());
    }

    @Test
    void aWaitIsNotShortened() {
        Walk walk = asking(pause("cool", "5 min")).asks("first.cool").after("4 min 59 s");
        assertEquals("It is too early: the time has not passed.", walk.refusal(new Fact.WaitElapsed("cool")));
        walk.after("1 s").tell(new Fact.WaitElapsed("cool")).asks("next.ok");
    }

    @Test
    void steppingTheWallClockDoesNotShortenAWait() {
        Walk walk = asking(pause("cool", "5 min")).after("1 min").stepWallClock(Parts.duration("5 min"));
        walk.refusal(new Fact.WaitElapsed("cool"));
        walk.after("4 min").tell(new Fact.WaitElapsed("cool")).asks("next.ok");
    }

    @Test
    void aStimulusIsConfirmedAndItsInstrumentNamed() {
        asking(apply("load", "calibrator")).asks("instrument.calibrator").good().asks("first.load").good().asks("next.ok");
        asking(apply("load", "")).asks("first.load").good().asks("next.ok");
    }

    @Test
    void anAnswerToSomethingElseIsRefusedAndSaysWhatIsAskedFor() {
        Walk walk = asking(text("damage"), confirm("ok"));
        assertEquals("This is not asked for now. Asked for: first.damage.", walk.refusal(new Observation.Confirmed("ok", true)));
        walk.refusal(new Observation.TextEntered("other", "x"));
        walk.refusal(new Fact.Marked("on"));
        walk.refusal(new Fact.Switched("supply", true));
        walk.refusal(new Fact.PowerAnswered(true));
        walk.refusal(new Fact.Released("damage", Walk.SUPERVISOR, true));
        walk.refusal(new Fact.HazardAcknowledged("mains"));
        walk.refusal(Walk.opening(false));
    }

    // ---- choices that could destroy

    private static Walk erasing(Move failed) {
        return asking(choose("erase", List.of(item("fault_log")), List.of(protectedItem("owner_program"), item("values")), failed));
    }

    @Test
    void aChoiceIsSpelledOutItemByItemTheSparedOnesToo() {
        Walk walk = erasing(WRONG).asks("first.erase.fault_log");
        assertTrue(assertInstanceOf(Demand.ConfirmItem.class, walk.demand()).chosen());
        walk.refusal(new Observation.ItemConfirmed("erase", "owner_program", true));
        walk.good().asks("first.erase.owner_program");
        assertFalse(assertInstanceOf(Demand.ConfirmItem.class, walk.demand()).chosen());
        walk.good().asks("first.erase.values").good().asks("next.ok");
        assertEquals(Outcome.CONFORMS, walk.last(Derived.CheckDecided.class).outcome());
    }

    @Test
    void anItemThatWasNotAsChosenFails() {
        Walk walk = erasing(WRONG).good().tell(new Observation.ItemConfirmed("erase", "owner_program", false)).asks("off.supply.off");
        assertEquals("not carried out as chosen: owner_program", walk.last(Derived.CheckDecided.class).words());
    }

    @Test
    void aReleaseOfOneItemLeavesTheOthersToBeAsked() {
        Walk walk = erasing(releaseBy(Role.SUPERVISOR)).tell(new Observation.ItemConfirmed("erase", "fault_log", false));
        walk.asks("first.erase.release").good().asks("first.erase.owner_program").good().asks("first.erase.values").good().asks("next.ok");
        assertEquals(List.of(Outcome.DOES_NOT_CONFORM, Outcome.RELEASED),
                walk.all(Derived.CheckDecided.class).stream().map(Derived.CheckDecided::outcome).toList());
        assertEquals(Outcome.RELEASED, walk.last(Derived.StepDecided.class).outcome());
    }

    @Test
    void aReleaseOfTheLastItemEndsTheChoice() {
        Walk walk = erasing(releaseBy(Role.SUPERVISOR)).good().good().tell(new Observation.ItemConfirmed("erase", "values", false));
        walk.asks("first.erase.release").good().asks("next.ok");
    }
}
