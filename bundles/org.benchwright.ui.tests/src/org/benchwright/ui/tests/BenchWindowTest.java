package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.core.Verdict;
import org.benchwright.present.EntryKind;
import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Tests carried out in the window, by keyboard alone. */
@ExtendWith(QuietLog.class)
class BenchWindowTest {

    @Test
    void aGoodUnitIsAccepted() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100001", true);
        Technician.finish(test, Answers.of("accepted"));
        assertEquals(Verdict.ACCEPTED, test.shown().ending().get().outcome());
        assertTrue(test.shown().ending().get().words().startsWith("rehearsal: would be accepted | "), test.shown().ending().get().words());
        Screen.waitFor("nothing is asked at the end", () -> Screen.entryFields().isEmpty());
        Screen.waitFor("So far tells the margins",
                () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("3.02 V accepted: 0.52 V inside of the limits")));
    }

    @Test
    void aUnitWhoseFaultLampStaysOnIsRejectedAtPowerUp() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100002", true);
        Answers answers = Answers.of("rejected-at-power-up");
        Technician.answerUntil(test, answers, "lamps.flt");
        Technician.answer(test, answers);
        Technician.finish(test, answers);
        assertEquals(Verdict.REJECTED, test.shown().ending().get().outcome());
    }

    @Test
    void aUnitThatDropsOutHasItsFaultLogExplained() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100003", true);
        Answers answers = Answers.of("dropped-out-of-soak");
        Technician.answerUntil(test, answers, "stop_log.fault_log");
        Technician.answer(test, answers);
        assertEquals(List.of("W01"), test.shown().last().explanations().stream().map(e -> e.code()).toList());
        assertTrue(test.shown().last().explanations().get(0).known());
        Technician.finish(test, answers);
        assertEquals(Verdict.REJECTED, test.shown().ending().get().outcome());
    }

    @Test
    void twoUnitsAreTestedInTurnWithoutMixingUp() throws Exception {
        OpenTest controller = Technician.open(Technician.C16, "C16-100004", true);
        Answers controllerAnswers = Answers.of("rejected-at-power-up");
        OpenTest supply = Technician.open("tarn-p24-acceptance.procedure", "P24-100004", true);
        Answers supplyAnswers = Answers.of("p24-accepted");
        while (controller.shown().ending().isEmpty() || supply.shown().ending().isEmpty()) {
            if (controller.shown().ending().isEmpty()) {
                Technician.look(controller);
                Technician.answer(controller, controllerAnswers);
            }
            if (supply.shown().ending().isEmpty()) {
                Technician.look(supply);
                Technician.answer(supply, supplyAnswers);
            }
        }
        assertEquals(Verdict.REJECTED, controller.shown().ending().get().outcome());
        assertEquals(Verdict.ACCEPTED, supply.shown().ending().get().outcome());
    }

    @Test
    void theMakeSafeKeyAsksWhyAndEndsTheTest() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100005", true);
        Technician.answerUntil(test, Answers.of("accepted"), "plate.photo");
        Shown before = test.shown();
        Screen.command("org.benchwright.ui.makeSafe");
        assertEquals(before, test.shown(), "nothing happens without a reason");
        Screen.enter("smell of burning");
        Screen.waitFor("make safe", () -> test.shown().version() > before.version());
        assertTrue(test.shown().card().place().startsWith("Make safe"), test.shown().card().place());
        assertTrue(test.shown().soFar().stream().anyMatch(line -> line.words().contains("smell of burning")));
    }

    @Test
    void anExclamationMarkIsTheMakeSafeKeyTooAndEscapeGoesBack() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100006", true);
        Shown before = test.shown();
        assertFalse(Screen.key(Screen.entryFields().get(0), '1', '!'), "the mark itself is not typed");
        Screen.settle();
        Screen.key(Screen.entryFields().get(0), SWT.ESC, SWT.ESC);
        Screen.settle();
        assertEquals(before, test.shown());
        Technician.enter(test, "yes, KG-2026-311");
        Screen.waitFor("the answer", () -> test.shown().version() > before.version());
    }

    @Test
    void aRefusedEntryStaysInTheFieldAndSaysWhatToDo() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100007", true);
        Shown before = test.shown();
        assertEquals(EntryKind.DECIDE, before.kind());
        Screen.enter("perhaps");
        Screen.waitFor("the refusal", () -> test.shown().last().refused().isPresent());
        Technician.seen(test);
        assertEquals(before.version(), test.shown().version());
        assertEquals("perhaps", Screen.entryFields().get(0).getText());
    }

    @Test
    void anEntryIsStruckByTheMinusKeyAndANoteAddedByThePlus() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100008", true);
        Answers answers = Answers.of("accepted");
        Technician.answerUntil(test, answers, "plate.text");
        Technician.answer(test, answers);
        long version = test.shown().version();
        Technician.enter(test, "+ label came off");
        Screen.waitFor("the note", () -> test.shown().version() == version + 1);
        Technician.enter(test, "-");
        Screen.waitFor("the strike", () -> test.shown().version() == version + 2);
        assertEquals("plate.text", test.shown().key(), "it is asked again");
        assertEquals(1, test.shown().soFar().stream().filter(TimelineLine::struck).count());
        assertTrue(test.shown().soFar().stream().anyMatch(line -> line.words().contains("label came off")));
    }

    @Test
    void anAnswerToACardThatHasChangedIsNotRecorded() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100009", true);
        long version = test.shown().version();
        test.answer(version, List.of("yes, KG-2026-311"));
        test.answer(version, List.of("yes, KG-2026-311"));
        Screen.waitFor("the second answer", () -> test.shown().last().refused().isPresent());
        assertEquals(version + 1, test.shown().version());
        assertEquals(1, test.shown().soFar().stream().filter(line -> line.words().contains("KG-2026-311")).count());
    }

    @Test
    void theListOfUnitsSelectsTheCard() throws Exception {
        OpenTest first = Technician.open(Technician.C16, "C16-100010", true);
        OpenTest second = Technician.open(Technician.C16, "C16-100011", true);
        Screen.waitFor("both in the list", () -> units().getItemCount() >= 2 && row("C16-100010") >= 0 && row("C16-100011") >= 0);
        Screen.select(units(), row("C16-100010"));
        Screen.settle();
        assertEquals(first.id(), Technician.desk().selected());
        long untouched = second.shown().version();
        Technician.seen(first);
        Screen.enter("yes, KG-2026-311");
        Screen.waitFor("the answer", () -> first.shown().version() == 2);
        assertEquals(untouched, second.shown().version());
    }

    @Test
    void aKeyGoesFromUnitToUnitAndTheEntryIsTheirs() throws Exception {
        OpenTest first = Technician.open(Technician.C16, "C16-100013", true);
        OpenTest second = Technician.open(Technician.C16, "C16-100014", true);
        Screen.waitFor("both in the list", () -> row("C16-100013") >= 0 && row("C16-100014") >= 0);
        int units = Technician.desk().units().size();
        Technician.look(first);
        for (int i = 0; i < units && !Technician.desk().selected().equals(second.id()); i++) {
            Screen.command("org.benchwright.ui.nextUnit");
        }
        assertEquals(second.id(), Technician.desk().selected());
        Technician.seen(second);
        assertTrue(Screen.entryFields().get(0).isFocusControl(), "typed into at once");
        Screen.enter("yes, KG-2026-311");
        Screen.waitFor("the answer", () -> second.shown().version() == 2);
        for (int i = 0; i < units; i++) {
            Technician.desk().selectNext();
        }
        assertEquals(second.id(), Technician.desk().selected(), "round in a circle");
    }

    private static Table units() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 1);
    }

    private static int row(String serial) {
        for (int i = 0; i < units().getItemCount(); i++) {
            if (units().getItem(i).getText(0).startsWith(serial)) {
                return i;
            }
        }
        return -1;
    }

    @Test
    void theFaceOfATimeShowsNoFieldForAnAnswerButTakesCommands() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-100012", false);
        Answers answers = Answers.of("accepted");
        while (test.shown().kind() != EntryKind.TIME) {
            Technician.answer(test, answers);
        }
        assertTrue(test.shown().deadline().get().left().toMinutes() >= 4, "the full waiting time");
        Technician.seen(test);
        Text field = Screen.entryFields().get(0);
        long version = test.shown().version();
        Screen.key(field, '1', '!');
        Screen.settle();
        Screen.enter("alarm in the hall");
        Screen.waitFor("make safe", () -> test.shown().version() > version);
        assertTrue(test.shown().soFar().stream().anyMatch(line -> line.words().contains("alarm in the hall")));
    }
}
