package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Expression;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Signal;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.present.Bench;
import org.benchwright.present.EntryKind;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.RoundStop;
import org.benchwright.present.StationSignIn;
import org.benchwright.present.TestDialogue;
import org.benchwright.present.TimelineLine;
import org.benchwright.present.UnitRow;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What hands do at the bench: the right unit, the right reading, the right person; and what they say to all units at once. */
class HandsTest extends OnABench {

    private static final Move END = new Move.Conclude(Verdict.REJECTED, "no");

    @BeforeEach
    void approve() throws Exception {
        approve(SamplePlan.acceptance());
        try (BenchLedger people = BenchLedger.open(ledger())) {
            Approved.auditors(people, time.benchTime());
        }
    }

    private static Bench.Work work(String serial, String technician) {
        return work(serial, technician, false);
    }

    private TestDialogue begin(Bench at, String serial) throws Exception {
        return at.begin(SamplePlan.acceptance(), SamplePlan.TEXT, work(serial, "QN"));
    }

    private void answer(TestDialogue dialogue, String... answers) throws Exception {
        for (String answer : answers) {
            dialogue.answer(List.of(answer.split(";")), folder);
        }
    }

    private TestDialogue atTheMeter(String serial) throws Exception {
        TestDialogue dialogue = begin(bench, serial);
        answer(dialogue, "y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01");
        assertEquals("bench.supply_volts", dialogue.key());
        return dialogue;
    }

    private void waitForTime(TestDialogue dialogue) throws Exception {
        while (dialogue.waitsForTime()) {
            time.advance(dialogue.countdown().orElseThrow().left());
            dialogue.timeHasCome();
        }
    }

    private TestDialogue atTheRelease(TestDialogue dialogue) throws Exception {
        answer(dialogue, "24.02", "", "u", "y", "u", "now");
        waitForTime(dialogue);
        answer(dialogue, "y", "y", "y", "none", "a; a", "y", "y");
        return dialogue;
    }

    private static List<String> words(TestDialogue dialogue) {
        return dialogue.soFar().stream().map(TimelineLine::words).toList();
    }

    // ---- readings

    @Test
    void aSlippedPointIsQuestionedAndTheValueEnteredOnceMoreOrMended() throws Exception {
        TestDialogue dialogue = atTheMeter("C16-004711");
        answer(dialogue, "240,2V");
        assertEquals("24.02 V would be inside. Is 240.2 V what the instrument shows?", dialogue.card().question());
        assertEquals(List.of("y, or the value that it shows"), dialogue.card().parts());
        answer(dialogue, "24020 mV");
        assertEquals("bench.supply.off", dialogue.key());
        assertTrue(words(dialogue).contains("supply volts: 240.2 V was questioned; 24.02 V may have been meant"), words(dialogue).toString());
        assertTrue(BenchLedger.verify(ledger()).sound());
    }

    @Test
    void yesEntersItAsItWasTyped() throws Exception {
        TestDialogue dialogue = atTheMeter("C16-004711");
        answer(dialogue, "2.4", "Y");
        assertFalse(dialogue.key().equals("bench.supply_volts"), dialogue.key());
        assertTrue(words(dialogue).stream().anyMatch(each -> each.startsWith("2.4 V rejected")), words(dialogue).toString());
    }

    // ---- grids and lamps

    /** The sample's family and preconditions, with a grid of three cells and a lamp that flashes. */
    private static Plan gridAndLamp() {
        Move.Conclude no = new Move.Conclude(Verdict.REJECTED, "no");
        UnitOfMeasure volt = UnitOfMeasure.of("V");
        List<Action.AxisValue> applied = List.of("4", "12", "20").stream()
                .map(each -> new Action.AxisValue(each + " V", Optional.of(Quantity.of(each, "V")))).toList();
        Action grid = new Action.Grid("shown", "shown", volt, List.of(new Action.Axis("applied", applied, Optional.empty())), Duration.ZERO,
                new Expression.Difference(new Expression.Name("shown"), new Expression.Name("applied")),
                Limits.between(Quantity.of("-0.1", "V"), Quantity.of("0.1", "V")), DecisionRule.SIMPLE, Optional.empty(), no, no);
        Signal lamp = new Signal.LampShows("flt", "FLT", Optional.of(LampColour.RED), new LampPattern.Flashing(new FlashRate.Slow()));
        Action expect = new Action.Expect("flt", List.of(new Action.AnyOf(List.of(lamp))), new Action.Window("on", Duration.ofSeconds(2), Duration.ZERO, true), no);
        Step readings = new Step("readings", "Read.", Optional.empty(), List.of(), List.of(), List.of(grid));
        Step flash = new Step("flash", "Look.", Optional.empty(), List.of(), List.of(), List.of(new Action.Mark("on", "Press."), expect));
        return ofSteps(readings, flash);
    }

    /** The sample without its preconditions, with these steps only. */
    private static Plan ofSteps(Step... steps) {
        return ChangedPlan.of(SamplePlan.acceptance()).withoutPreconditions()
                .stages(List.of(new WorkStage("all", "All", false, Optional.empty(), List.of(), List.of(steps)))).plan();
    }

    /** One measurement with everything in sight, one that is entered blind, its mean of two. */
    private static Plan blind() {
        Move.GoTo on = new Move.GoTo("all", "blind", Optional.empty());
        UnitOfMeasure volt = UnitOfMeasure.of("V");
        Limits limits = Limits.between(Quantity.of("23.5", "V"), Quantity.of("24.5", "V"));
        Step seen = new Step("seen", "Measure.", Optional.empty(), List.of(), List.of(),
                List.of(new Action.Measure("first_volts", "meter", volt, limits, DecisionRule.SIMPLE, Optional.empty(), on, on)));
        Step unseen = new Step("blind", "Measure again.", Optional.empty(), List.of(), List.of(), List.of(new Action.Measure("volts", "meter", volt, limits,
                DecisionRule.SIMPLE, Optional.empty(), END, END, Optional.of(new Action.Count(2)), Optional.of(Action.Measure.Entry.BLIND))));
        return ofSteps(seen, unseen);
    }

    @Test
    void whileAReadingIsEnteredBlindNoEarlierOneOfItsKindIsTold() throws Exception {
        TestDialogue dialogue = bench.begin(blind(), "text", work("C16-004711", "QN", true));
        dialogue.answer("M-17, 0.02 V, k 2, due 2027-03-01", folder);
        assertEquals("seen.first_volts", dialogue.key());
        TestDialogue.Told first = dialogue.answer("24.97", folder);
        assertEquals("blind.volts", dialogue.key());
        nothingGivesAway(dialogue, first, "24.97");
        assertTrue(words(dialogue).contains("(shown again once volts is on record)"), words(dialogue).toString());
        TestDialogue.Told second = dialogue.answer("24.11", folder);
        assertEquals("blind.volts", dialogue.key());
        nothingGivesAway(dialogue, second, "24.11");
        nothingGivesAway(dialogue, dialogue.answer("241.1", folder), "24.11");
        TestDialogue.Told last = dialogue.answer("24.13", folder);
        assertFalse(dialogue.key().startsWith("blind"), dialogue.key());
        assertTrue(words(dialogue).containsAll(List.of("first volts: 24.97 V", "volts: 24.11 V", "volts: 24.13 V")), words(dialogue).toString());
        assertTrue(last.news().stream().anyMatch(each -> each.contains("24.12 V accepted")), last.news().toString());
        assertFalse(words(dialogue).stream().anyMatch(each -> each.contains("shown again")), words(dialogue).toString());
    }

    /** A reading inside the guard band is taken again, and the reason for that is given before it. */
    @Test
    void aBlindReadingThatIsTakenAgainIsAsBlindWhileTheReasonIsOwed() throws Exception {
        TestDialogue dialogue = bench.begin(blindOnceMore(), "text", work("C16-004711", "QN", true));
        dialogue.answer("M-17, 0.02 V, k 2, due 2027-03-01", folder);
        TestDialogue.Told first = dialogue.answer("24.49", folder);
        assertEquals("blind.volts.reason", dialogue.key());
        nothingGivesAway(dialogue, first, "24.49");
        nothingGivesAway(dialogue, first, "24.5 V");
        nothingGivesAway(dialogue, dialogue.answer("The probe slipped.", folder), "24.5 V");
        dialogue.answer("24.2", folder);
        assertTrue(words(dialogue).contains("volts: 24.49 V"), words(dialogue).toString());
    }

    /** One guarded measurement that is entered blind, and again where it is undecided. */
    private static Plan blindOnceMore() {
        Limits limits = Limits.between(Quantity.of("23.5", "V"), Quantity.of("24.5", "V"));
        Action.Again again = new Action.Again(1, Combination.LAST);
        Action.Measure volts = new Action.Measure("volts", "meter", UnitOfMeasure.of("V"), limits, DecisionRule.GUARDED_BOTH_WAYS, Optional.of(again),
                END, END, Optional.empty(), Optional.of(Action.Measure.Entry.BLIND));
        Step unseen = new Step("blind", "Measure.", Optional.empty(), List.of(), List.of(), List.of(volts));
        return ofSteps(unseen);
    }

    private static void nothingGivesAway(TestDialogue dialogue, TestDialogue.Told told, String value) {
        assertFalse((words(dialogue) + " " + told.news() + " " + dialogue.card()).contains(value), words(dialogue) + " " + told.news() + " " + dialogue.card());
        assertFalse(words(dialogue).toString().contains("rejected"), words(dialogue).toString());
    }

    private TestDialogue rehearsed() throws Exception {
        return bench.begin(gridAndLamp(), "text", work("C16-004711", "QN", true));
    }

    @Test
    void aPastedColumnFillsTheCellsAndTheWorstSoFarIsShown() throws Exception {
        TestDialogue dialogue = rehearsed();
        dialogue.answer(List.of("4.02"), folder);
        assertTrue(dialogue.card().question().endsWith("So far: applied 4 V: 0.02 V accepted: 0.08 V inside of the limits -0.1 .. 0.1 V, uncertainty 0 V."),
                dialogue.card().question());
        TestDialogue.Told told = dialogue.answer(List.of("11.95\n20.01\n7"), folder);
        assertEquals("flash.on", dialogue.key());
        assertTrue(told.news().stream().anyMatch(each -> each.startsWith("2 of 3 pasted values are entered")), told.news().toString());
        assertTrue(words(dialogue).containsAll(List.of("shown 1: 4.02 V", "shown 2: 11.95 V", "shown 3: 20.01 V")), words(dialogue).toString());
    }

    @Test
    void aColumnStopsAtWhatIsNoValue() throws Exception {
        TestDialogue dialogue = rehearsed();
        TestDialogue.Told told = dialogue.answer(List.of("4.02\ttwelve\t20"), folder);
        assertEquals("readings.shown", dialogue.key());
        assertTrue(told.news().get(told.news().size() - 1).startsWith("\"twelve\" is no value"), told.news().toString());
        assertEquals(1, words(dialogue).stream().filter(each -> each.startsWith("shown ")).count());
        assertThrows(EntryRefusedException.class, () -> dialogue.answer(List.of("x\ty"), folder));
    }

    /** A copied column has an empty cell where nothing was read: what stands behind it belongs to the cells behind that one. */
    @Test
    void noValueSlipsIntoTheCellOfOneThatIsEmpty() throws Exception {
        TestDialogue dialogue = rehearsed();
        TestDialogue.Told told = dialogue.answer(List.of("4.02\r\n\r\n20.01\r\n"), folder);
        assertEquals("1 of 3 pasted values is entered; the next one is empty, so that nothing behind it was entered", told.news().get(told.news().size() - 1));
        assertTrue(dialogue.card().question().contains("at applied 12 V"), dialogue.card().question());
        String words = assertThrows(EntryRefusedException.class, () -> dialogue.answer(List.of("; 20.01"), folder)).getMessage();
        assertEquals("What was pasted begins with an empty cell, so that nothing was entered. Paste from the first value on.", words);
        dialogue.answer(List.of("12.01\n20.01\n\n"), folder);
        assertEquals("flash.on", dialogue.key());
    }

    /** Whoever pasted it has to know that it stands there unanswered, and what did not go in. */
    @Test
    void aColumnStopsAtWhatIsQuestioned() throws Exception {
        TestDialogue dialogue = rehearsed();
        TestDialogue.Told told = dialogue.answer(List.of("4.02\n119.5\n20.01"), folder);
        assertEquals("1 of 3 pasted values is entered; 119.5 is questioned: answer that, then paste what comes behind it", told.news().get(told.news().size() - 1));
        dialogue.answer(List.of("11.95"), folder);
        assertTrue(dialogue.answer(List.of("200.1"), folder).news().isEmpty(), "the card asks");
        TestDialogue last = bench.begin(gridAndLamp(), "text", work("C16-004712", "QN", true));
        assertEquals("1 of 2 pasted values is entered; 119.5 is questioned: answer that, then paste what comes behind it",
                last.answer(List.of("4.02\n119.5"), folder).news().stream().reduce((a, b) -> b).orElse(""));
    }

    /** Mostly the other column is what should be read. */
    @Test
    void severalColumnsAreNotGuessedAt() throws Exception {
        TestDialogue dialogue = rehearsed();
        String words = assertThrows(EntryRefusedException.class, () -> dialogue.answer(List.of("4\t4.02\r\n12\t11.95\r\n20\t20.3"), folder)).getMessage();
        assertTrue(words.startsWith("What was pasted has 3 rows and 2 columns,"), words);
        assertTrue(words(dialogue).stream().noneMatch(each -> each.startsWith("shown ")), words(dialogue).toString());
    }

    @Test
    void aSlipIsQuestionedWhereSomethingIsReckonedFromTheReading() throws Exception {
        TestDialogue dialogue = rehearsed();
        answer(dialogue, "40.2");
        assertEquals("4.02 V would be inside. Is 40.2 V what the instrument shows?", dialogue.card().question());
        answer(dialogue, "4.02", "11.2");
        assertTrue(dialogue.card().question().contains("at applied 20 V"), "moved anywhere it is outside: " + dialogue.card().question());
    }

    @Test
    void aLampIsTappedAlong() throws Exception {
        TestDialogue dialogue = rehearsed();
        dialogue.answer(List.of("4\n12\n20"), folder);
        dialogue.answer("", folder);
        while (dialogue.waitsForTime()) {
            dialogue.pause(dialogue.countdown().orElseThrow().left());
            dialogue.timeHasCome();
        }
        assertTrue(dialogue.tapsAlong());
        assertTrue(dialogue.card().parts().get(0).endsWith("t to tap along with the lamp"), dialogue.card().parts().toString());
        assertThrows(EntryRefusedException.class, () -> dialogue.answerTaps(List.of()));
        long second = 1_000_000_000L;
        dialogue.answerTaps(List.of(7 * second, 9 * second, 11 * second, 13 * second, 15 * second));
        assertTrue(words(dialogue).contains("flt: tapped 5 times along with the lamp, 8 s"), words(dialogue).toString());
        assertFalse(dialogue.key().startsWith("flash"), "0.5 Hz is slow");
    }

    // ---- the right unit

    @Test
    void whoeverComesFromAnotherUnitSaysWhichOneThisIs() throws Exception {
        TestDialogue dialogue = begin(bench, "C16-004711");
        dialogue.arrive();
        assertTrue(dialogue.asksScan());
        assertEquals("Scan or type the serial number of the unit before you.", dialogue.card().question());
        assertEquals(EntryKind.WRITE, dialogue.kind());
        String words = assertThrows(EntryRefusedException.class, () -> answer(dialogue, "C16-004712")).getMessage();
        assertEquals("That is C16-004712, and this test is of C16-004711. Go to the unit, or select its test.", words);
        answer(dialogue, "\u0002C16-00\u001d4711\u0003\r");
        assertFalse(dialogue.asksScan());
        answer(dialogue, "y, 4711");
        assertTrue(words(dialogue).contains("Unit identified: C16-004711"), words(dialogue).toString());
    }

    /** A slip is struck where it was made, and a position is that of the unit one stands before. */
    @Test
    void beforeTheScanNothingIsStruckNotedOrPlaced() throws Exception {
        TestDialogue dialogue = begin(bench, "C16-004711");
        answer(dialogue, "y, 4711");
        dialogue.arrive();
        int before = words(dialogue).size();
        for (Executable entry : List.<Executable>of(dialogue::strike, () -> dialogue.note("Smells warm."), () -> dialogue.place("B 3"))) {
            assertEquals("Scan or type the serial number of the unit before you.", assertThrows(EntryRefusedException.class, entry).getMessage());
        }
        assertEquals(before, words(dialogue).size());
        answer(dialogue, "C16-004711");
        dialogue.place("B 3");
        dialogue.strike();
    }

    @Test
    void makingSafeWaitsForNoScan() throws Exception {
        TestDialogue dialogue = atTheMeter("C16-004711");
        dialogue.arrive();
        dialogue.makeSafe("Smoke.");
        assertTrue(words(dialogue).stream().anyMatch(each -> each.contains("Smoke.")));
    }

    @Test
    void aRoundGoesAlongTheRack() throws Exception {
        Instant due = time.instant();
        List<UnitRow> units = List.of(row("1", "C16-000001", "B 2", due), row("2", "C16-000002", "", due), row("3", "C16-000003", "A 10", due),
                row("4", "C16-000004", "A 9", due), new UnitRow("5", "C16-000005", "f", "p", "s", Optional.empty(), Optional.empty(), false, "x", false, "",
                        false, Optional.of("A 1"), "QN", Optional.empty(), Optional.empty(), ""));
        assertEquals(List.of("A 9", "A 10", "B 2", ""), RoundStop.of(units).stream().map(stop -> stop.position().orElse("")).toList());
        assertEquals(List.of(true, true, true, false), RoundStop.of(units).stream().map(RoundStop::placeTells).toList());
    }

    @Test
    void aPositionThatTwoUnitsAreSaidToStandInTellsNothing() {
        Instant due = time.instant();
        List<UnitRow> units = List.of(row("1", "C16-000001", "A 1", due), row("2", "C16-000002", "a 1", due), row("3", "C16-000003", "A 2", due));
        assertEquals(List.of(true, false, false), RoundStop.of(units).stream().map(RoundStop::placeTells).sorted(Comparator.reverseOrder()).toList());
        assertTrue(RoundStop.of(units).stream().filter(RoundStop::placeTells).allMatch(stop -> stop.serial().equals("C16-000003")));
    }

    private static UnitRow row(String test, String serial, String position, Instant due) {
        return new UnitRow(test, serial, "f", "p", "s", Optional.of(Duration.ofHours(3)), Optional.of(due), false, "x", false, "", false,
                Optional.of(position).filter(at -> !at.isEmpty()), "QN", Optional.empty(), Optional.of(due.plus(Duration.ofHours(2))), "mode run");
    }

    @Test
    void aUnitOnSoakIsListedWithItsPosition() throws Exception {
        TestDialogue dialogue = atTheRelease(atTheMeter("C16-004711"));
        answer(dialogue, "y, GW", "now");
        waitForTime(dialogue);
        dialogue.place("A 3");
        answer(dialogue, "y", "y; 22 degC; 24.0 V");
        assertEquals(Optional.of("A 3"), bench.units().get(0).position());
        assertEquals(List.of("A 3"), RoundStop.of(bench.units()).stream().map(stop -> stop.position().orElse("")).toList());
        long looks = dialogue.looks();
        time.advance(Duration.ofHours(24));
        answer(dialogue, "y; 22 degC; 24.0 V");
        assertEquals(looks + 1, dialogue.looks());
    }

    // ---- the right person

    @Test
    void aHandOverIsOnRecordAndTheNextOneWorks() throws Exception {
        TestDialogue dialogue = begin(bench, "C16-004711");
        dialogue.handOver("TM");
        answer(dialogue, "y, 4711");
        assertEquals("TM", dialogue.technician());
        assertEquals("TM", dialogue.soFar().get(dialogue.soFar().size() - 2).who());
        assertThrows(EntryRefusedException.class, () -> dialogue.handOver("TM"));
        assertEquals("TM", bench.units().get(0).technician());
    }

    @Test
    void aReleaseByWhoeverHasAKeyTakesTheirPassword() throws Exception {
        TestDialogue dialogue = atTheRelease(atTheMeter("C16-004711"));
        assertEquals(Optional.empty(), dialogue.passwordFor(List.of("y, GW")));
        assertEquals(Optional.of("KM"), dialogue.passwordFor(List.of("y, KM")));
        assertThrows(EntryRefusedException.class, () -> answer(dialogue, "y, KM"));
        assertThrows(EntryRefusedException.class, () -> dialogue.release(List.of("y, KM"), "wrong password".toCharArray()));
        char[] unread = Approved.PASSWORD.toCharArray();
        assertThrows(EntryRefusedException.class, () -> dialogue.release(List.of("perhaps"), unread));
        assertTrue(new String(unread).isBlank(), "blanked out");
        char[] password = Approved.PASSWORD.toCharArray();
        dialogue.release(List.of("y, KM"), password);
        assertEquals("start.start", dialogue.key());
        assertTrue(new String(password).isBlank(), "blanked out");
        assertTrue(BenchLedger.verify(ledger()).sound());
    }

    @Test
    void whoeverHasSignedInSignsAtTheEnd() throws Exception {
        StationSignIn station = new StationSignIn(clocks);
        char[] pin = "4711".toCharArray();
        station.signIn(ledger(), "QN", Approved.PASSWORD.toCharArray(), pin);
        assertEquals("    ", new String(pin));
        TestDialogue dialogue = begin(bench.at(station), "C16-004711");
        dialogue.makeSafe("Practice.");
        while (dialogue.ending().isEmpty()) {
            waitForTime(dialogue);
            answer(dialogue, dialogue.kind() == EntryKind.UNDERSTAND ? "u" : dialogue.key().startsWith("instrument.")
                    ? "M-17, 0.02 V, k 2, due 2027-03-01" : dialogue.kind() == EntryKind.WRITE ? "0.4" : "y");
        }
        assertTrue(dialogue.owesSignature());
        assertThrows(EntryRefusedException.class, () -> dialogue.sign("0000".toCharArray()));
        dialogue.sign("4711".toCharArray());
        assertFalse(dialogue.owesSignature());
        assertTrue(BenchLedger.verify(ledger()).sound());
    }

    @Test
    void aStationThatNobodyTouchesLocksItself() throws Exception {
        StationSignIn station = new StationSignIn(clocks);
        time.advance(StationSignIn.IDLE);
        assertFalse(station.lockIfIdle(), "nobody has signed in");
        station.signIn(ledger(), "QN", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        time.advance(StationSignIn.IDLE.minusSeconds(1));
        assertFalse(station.lockIfIdle());
        station.touched();
        time.advance(StationSignIn.IDLE.minusSeconds(1));
        assertFalse(station.lockIfIdle());
        time.advance(Duration.ofSeconds(1));
        assertTrue(station.lockIfIdle());
        assertTrue(station.locked());
        assertEquals(Optional.of("QN"), station.person());
        station.signIn(ledger(), "QN", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        assertFalse(station.locked());
        station.signOut();
        assertFalse(station.locked());
        assertEquals(Optional.empty(), station.person());
    }

    @Test
    void whatSomebodySignsWhileSignedInTakesThePinUntilTheStationIsLocked() throws Exception {
        StationSignIn station = new StationSignIn(clocks);
        PeopleDesk people = new PeopleDesk(ledger(), clocks);
        assertFalse(station.takesPin("LW"));
        station.signIn(ledger(), "LW", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        assertTrue(station.takesPin(" LW"));
        assertFalse(station.takesPin("KM"), "theirs is the full password");
        char[] pin = "4711".toCharArray();
        people.authorise(station.signing("LW", pin), "QN", "tarn_z9", "*", "2026-01-01", "2026-12-31");
        assertTrue(new String(pin).isBlank(), "blanked out");
        assertThrows(EntryRefusedException.class, () -> people.endAuthorisation(station.signing("LW", Approved.PASSWORD.toCharArray()), "QN", "tarn_z9", "*", "moved"),
                "it is not the PIN");
        station.lock();
        assertThrows(EntryRefusedException.class, () -> people.endAuthorisation(station.signing("LW", "4711".toCharArray()), "QN", "tarn_z9", "*", "moved"));
        people.endAuthorisation(station.signing("LW", Approved.PASSWORD.toCharArray()), "QN", "tarn_z9", "*", "moved");
        assertTrue(BenchLedger.verify(ledger()).sound());
    }

    @Test
    void aKeyThatWasReplacedSignsNoMoreWhoeverIsSignedInWithIt() throws Exception {
        StationSignIn station = new StationSignIn(clocks);
        station.signIn(ledger(), "LW", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        PeopleDesk people = new PeopleDesk(ledger(), clocks);
        people.rotate(new PeopleDesk.Signing("LW", Approved.PASSWORD.toCharArray()), "another good password".toCharArray());
        assertThrows(EntryRefusedException.class, () -> people.grant(station.signing("LW", "4711".toCharArray()), "QN", "engineer"));
        assertTrue(station.locked());
    }

    @Test
    void aReleaseIsNeverSignedWithThePin() throws Exception {
        StationSignIn station = new StationSignIn(clocks);
        station.signIn(ledger(), "KM", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        TestDialogue dialogue = atTheRelease(atTheMeter("C16-004711"));
        assertThrows(EntryRefusedException.class, () -> dialogue.release(List.of("y, KM"), "4711".toCharArray()));
        dialogue.release(List.of("y, KM"), Approved.PASSWORD.toCharArray());
        assertEquals("start.start", dialogue.key());
    }

    // ---- all units at once

    @Test
    void everyUnitIsMadeSafeWithEventsOfItsOwn() throws Exception {
        begin(bench, "C16-004711");
        atTheMeter("C16-004712");
        TestDialogue third = begin(bench, "C16-004713");
        third.makeSafe("Before.");
        List<Bench.UnitTold> told = bench.makeAllSafe("Fire alarm.", work("", "TM"));
        assertEquals(3, told.size());
        assertTrue(told.stream().allMatch(Bench.UnitTold::done), told.toString());
        assertTrue(told.get(2).words().endsWith("is being made safe already"), told.toString());
        for (UnitRow unit : bench.units().subList(0, 2)) {
            assertTrue(bench.record(unit.test()).orElseThrow().toString().contains("Fire alarm."), unit.test());
        }
        assertEquals(3, bench.units().size(), "what is left to do is asked at each unit");
        assertTrue(BenchLedger.verify(ledger()).sound());
    }
}
