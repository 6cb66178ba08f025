package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.core.SignalWord;
import org.benchwright.present.RoundStop;
import org.benchwright.present.LookReminder;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.Countdown;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.StepCard;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.TestDialogue;
import org.benchwright.present.TimelineLine;
import org.benchwright.present.UnitRow;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the screens show and allow while a real test is carried out. */
class DialogueTest extends OnABench {

    @BeforeEach
    void approve() throws Exception {
        approve(SamplePlan.acceptance());
    }

    private TestDialogue begin() throws Exception {
        return begin("QN");
    }

    private TestDialogue begin(String technician) throws Exception {
        return bench.begin(SamplePlan.acceptance(), SamplePlan.TEXT, work("C16-004711", technician, false));
    }

    private void answer(TestDialogue dialogue, String... answers) throws Exception {
        for (String answer : answers) {
            dialogue.answer(answer, folder);
        }
    }

    private TestDialogue atLamps() throws Exception {
        TestDialogue dialogue = begin();
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01", "24.02", "", "u", "y", "u");
        return dialogue;
    }

    private TestDialogue onSoak() throws Exception {
        TestDialogue dialogue = atLamps();
        answer(dialogue, "now");
        while (dialogue.waitsForTime()) {
            time.advance(dialogue.countdown().orElseThrow().left());
            dialogue.timeHasCome();
        }
        answer(dialogue, "y", "y", "y", "none", "a; a", "y", "y", "y, GW", "now");
        time.advance(Duration.ofSeconds(30));
        dialogue.timeHasCome();
        answer(dialogue, "y", "y; 22 degC; 24.0 V");
        return dialogue;
    }

    @Test
    void theStoryTellsWhatWasErasedFromWhatWasSpared() throws Exception {
        List<String> told = onSoak().soFar().stream().map(TimelineLine::words).toList();
        assertTrue(told.contains("erased Processor fault log: yes"), told.toString());
        assertTrue(told.contains("spared Owner's program: yes"), told.toString());
    }

    @Test
    void aPreconditionShowsItsStatementInCapitals() throws Exception {
        StepCard card = begin().card();
        assertEquals("C16-004711 | Tarn C16 modular controller | C16 acceptance on the bench, revision 3", card.unit());
        assertEquals("Before the work: precondition", card.place());
        assertEquals("WRIST STRAP TESTED.", card.instruction());
        assertEquals(List.of("!", "+", "@", ">", "??", "?", "q"), card.keys().stream().map(StepCard.KeyHint::key).toList());
    }

    @Test
    void aHazardIsShownWithItsThreePartsBeforeItsStep() throws Exception {
        TestDialogue dialogue = begin();
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none");
        StepCard card = dialogue.card();
        assertEquals("hazard.mains", dialogue.key());
        assertEquals(1, card.hazards().size());
        assertEquals(SignalWord.DANGER, card.hazards().get(0).signal());
        assertEquals("DANGER", card.hazards().get(0).word());
        assertEquals("kill by electric shock", card.hazards().get(0).can());
        assertEquals("", card.instruction());
        answer(dialogue, "u");
        assertEquals(List.of("DANGER: Rack supply terminals are live while it is on."), dialogue.card().reminders());
    }

    @Test
    void expectedIndicationsAreSpelledOut() throws Exception {
        StepCard card = atLamps().card();
        assertEquals("Power up: lamps", card.place());
        assertEquals("SWITCH ON.", card.instruction());
        assertEquals(List.of("PWR (Power) green steady within 2 s of \"on\"",
                "OK (Health) red steady, then OK (Health) green steady within 10 s of \"on\"",
                "FLT (Fault) off from 10 s after \"on\", for 5 s"), card.expected());
    }

    @Test
    void aDeadlineIsCountedDownFromItsMark() throws Exception {
        TestDialogue dialogue = atLamps();
        answer(dialogue, "now");
        time.advance(Duration.ofMillis(500));
        Countdown countdown = dialogue.countdown().orElseThrow();
        assertEquals(Duration.ofMillis(1500), countdown.left());
        assertTrue(countdown.audible());
        assertThrows(EntryRefusedException.class, dialogue::timeHasCome);
        assertThrows(EntryRefusedException.class, () -> dialogue.answer("y", folder));
        time.advance(Duration.ofMillis(1500));
        assertTrue(dialogue.countdown().orElseThrow().due());
        dialogue.timeHasCome();
        assertFalse(dialogue.countdown().orElseThrow().due());
    }

    @Test
    void whatTheOwnerMustNotLoseIsShownWhereSomethingIsErased() throws Exception {
        TestDialogue dialogue = atLamps();
        answer(dialogue, "now");
        while (dialogue.waitsForTime()) {
            time.advance(dialogue.countdown().orElseThrow().left());
            dialogue.timeHasCome();
        }
        answer(dialogue, "y", "y", "y", "none", "a; a");
        assertEquals("Erase Processor fault log. Is it done?", dialogue.card().question());
        answer(dialogue, "y");
        assertEquals(List.of("Owner's program"), dialogue.card().preserved());
        assertTrue(dialogue.card().question().startsWith("PROTECTED"), dialogue.card().question());
    }

    @Test
    void decisionsAreToldWithTheirMargin() throws Exception {
        TestDialogue dialogue = begin();
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01");
        TestDialogue.Told told = dialogue.answer("24.16 V", folder);
        assertEquals(List.of("24.16 V accepted: 0.34 V inside of the limits 23.5 .. 24.5 V, uncertainty 0.02 V"), told.news());
    }

    @Test
    void whoDeniesAQuestionedReadingIsAskedForTheRightOne() throws Exception {
        TestDialogue dialogue = begin();
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01", "240.2");
        EntryRefusedException refused = assertThrows(EntryRefusedException.class, () -> dialogue.answer("n", folder));
        assertEquals("Enter y if the instrument shows that, else the value that it shows.", refused.getMessage());
        assertEquals(1, dialogue.answer("24.02", folder).news().size());
    }

    @Test
    void anInstrumentThatTheRegisterDoesNotHaveIsToldWhole() throws Exception {
        TestDialogue dialogue = begin();
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none", "u", "");
        EntryRefusedException refused = assertThrows(EntryRefusedException.class, () -> dialogue.answer("M-9", folder));
        assertTrue(refused.getMessage().startsWith("M-9 is not in the register of instruments. Enter also its uncertainty"), refused.getMessage());
        assertTrue(refused.getMessage().endsWith("M-9, 0.05 V, k 2, due 2027-03-01"), "as large an uncertainty as is tolerated: " + refused.getMessage());
        refused = assertThrows(EntryRefusedException.class, () -> dialogue.answer("M-9, 0.02 V, k 2", folder));
        assertTrue(refused.getMessage().startsWith("Enter when its calibration is due"), refused.getMessage());
    }

    @Test
    void aStruckEntryStaysInTheTimeline() throws Exception {
        TestDialogue dialogue = begin();
        answer(dialogue, "y, 4711");
        assertTrue(dialogue.card().keys().stream().anyMatch(key -> key.key().equals("-")));
        assertEquals(List.of("Struck: strap: yes, 4711"), dialogue.strike().news());
        assertEquals("precondition.strap", dialogue.key());
        answer(dialogue, "y, 4712");
        List<TimelineLine> lines = dialogue.soFar();
        assertEquals("strap: yes, 4711", lines.get(1).words());
        assertTrue(lines.get(1).struck());
        assertEquals("Entry 2 struck", lines.get(2).words());
        assertFalse(lines.get(3).struck());
        assertEquals("QN", lines.get(3).who());
        assertEquals(Map.of("precondition.strap", 2), dialogue.answered());
    }

    @Test
    void everyKindOfEventHasWords() throws Exception {
        TestDialogue dialogue = onSoak();
        dialogue.note("the fan hums");
        dialogue.makeSafe("smoke");
        answer(dialogue, "");
        time.advance(Duration.ofMinutes(5));
        dialogue.timeHasCome();
        answer(dialogue, "0.4 V");
        assertTrue(dialogue.soFar().stream().noneMatch(line -> line.words().isBlank()));
        assertEquals("undecided", dialogue.ending().orElseThrow().outcome().word());
        assertEquals("undecided | Ended early by the technician: smoke | " + dialogue.test(), dialogue.ending().orElseThrow().words());
        assertEquals(List.of(), bench.units());
    }

    @Test
    void aUnitOnSoakIsListedWithItsNextLook() throws Exception {
        Instant before = time.instant();
        TestDialogue dialogue = onSoak();
        Instant begun = time.instant();
        UnitRow row = bench.units().get(0);
        assertEquals(dialogue.test(), row.test());
        assertEquals("C16-004711", row.serial());
        assertEquals("Tarn C16 modular controller", row.family());
        assertEquals("Unattended endurance", row.stage());
        assertEquals(Optional.of(Duration.ofHours(72)), row.soakLeft());
        assertEquals(Optional.of(begun.plus(Duration.ofHours(24))), row.nextLook());
        assertFalse(row.overdue());
        assertTrue(begun.isAfter(before));
        time.advance(Duration.ofHours(25));
        assertTrue(bench.units().get(0).overdue());
        answer(dialogue, "y; 22 degC; 24.0 V");
        assertEquals(Optional.of(Duration.ofHours(47)), bench.units().get(0).soakLeft());
    }

    /** Nobody has said yet whether its power stayed on, or read the hazards anew: its look is due all the same. */
    @Test
    void whatIsAskedFirstAfterAnInterruptionPutsNoLookOff() throws Exception {
        onSoak();
        Optional<Instant> due = bench.units().get(0).nextLook();
        Optional<Duration> left = bench.units().get(0).soakLeft();
        time.advance(Duration.ofHours(25));
        TestDialogue again = begin();
        assertEquals("power", again.key());
        UnitRow row = bench.units().get(0);
        assertEquals("Unattended endurance", row.stage());
        assertEquals("on soak, interrupted", row.state());
        assertEquals(due, row.nextLook());
        assertEquals(left, row.soakLeft());
        assertTrue(row.overdue());
        assertEquals(1, RoundStop.of(bench.units()).size());
        assertEquals(1, LookReminder.of(bench.units(), time.instant()).size());
        again.makeSafe("smoke");
        assertEquals(Optional.empty(), bench.units().get(0).nextLook());
    }

    @Test
    void aUnitAtALiveStepIsListedAsLive() throws Exception {
        TestDialogue dialogue = atLamps();
        answer(dialogue, "now");
        assertEquals("LIVE at step \"lamps\"", bench.units().get(0).state());
        assertEquals(Optional.empty(), bench.units().get(0).nextLook());
        assertTrue(dialogue.leavingWords().get(1).startsWith("It stays LIVE: supply."), dialogue.leavingWords().toString());
    }

    /** The step's own words say the contrary of what has to be done before it. */
    @Test
    void whatHasToBeSwitchedOffFirstIsAskedWithoutTheWordsOfTheStep() throws Exception {
        answer(atLamps(), "now");
        TestDialogue again = begin();
        answer(again, "y");
        assertEquals("SWITCH OFF AND ISOLATE: SUPPLY.", again.card().instruction());
    }

    @Test
    void whoeverWasOvertakenIsToldAndLosesNothing() throws Exception {
        TestDialogue mine = begin();
        answer(mine, "y, 4711");
        TestDialogue theirs = begin("AL");
        assertTrue(theirs.resumed());
        assertThrows(TakenElsewhereException.class, () -> mine.answer("22 degC", folder));
        assertEquals(theirs.key(), mine.key());
        answer(theirs, "22 degC");
        TestDialogue again = begin();
        assertEquals(theirs.test(), again.test());
        assertEquals("plate.photo", again.key());
    }

    @Test
    void initialsAndSerialNumbersAreChecked() {
        assertThrows(EntryRefusedException.class, () -> begin("Q N"));
        assertThrows(EntryRefusedException.class, () -> bench.begin(SamplePlan.acceptance(), SamplePlan.TEXT,
                work("  ", "QN", false)));
    }

    @Test
    void aLedgerThatIsNotThereIsNotMade() {
        Path missing = folder.resolve("elsewhere").resolve("bench.ledger");
        assertThrows(CannotStoreException.class, () -> Bench.read(missing, new Bench.Clocks(time, time, time)));
        assertThrows(CannotStoreException.class, () -> Bench.verify(missing, new Bench.Clocks(time, time, time)));
        assertFalse(Files.exists(missing.getParent()));
    }
}
