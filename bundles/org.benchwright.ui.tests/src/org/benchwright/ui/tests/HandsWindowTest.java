package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.benchwright.present.EntryKind;
import org.benchwright.present.StationSignIn;
import org.benchwright.present.TimelineLine;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.IdleLock;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.MovedTime;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.handlers.IHandlerService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The bench with hands full: foot switch, taps along with a lamp, the right unit, rounds, a locked station. */
@ExtendWith(QuietLog.class)
class HandsWindowTest {

    private static List<String> words(OpenTest test) {
        return test.shown().soFar().stream().map(TimelineLine::words).toList();
    }

    private static boolean asksScan(OpenTest test) {
        return test.shown().card().question().startsWith("Scan or type the serial number");
    }

    private static void after(OpenTest test, Shown before) {
        Screen.waitFor("what comes of it: " + test.shown().last(), () -> test.shown().version() > before.version());
        Technician.seen(test);
    }

    @Test
    void theFootSwitchGivesTheMainAnswerButReadsNoHazardAndEntersNoValue() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700001", true);
        Answers answers = Answers.of("accepted");
        Technician.answerUntil(test, answers, "hazard.mains");
        Shown hazard = test.shown();
        Technician.key(test, SWT.F7, (char) 0);
        Screen.settle();
        assertEquals(hazard.version(), test.shown().version(), "a hazard is read");
        while (test.shown().kind() != EntryKind.DO) {
            Technician.answer(test, answers);
        }
        Shown asked = test.shown();
        Technician.key(test, SWT.F7, (char) 0);
        after(test, asked);
        Technician.answerUntil(test, answers, "supply.supply_volts");
        Shown measured = test.shown();
        Technician.key(test, SWT.F7, (char) 0);
        Screen.settle();
        assertEquals(measured.version(), test.shown().version(), "there is no value yet");
        Screen.entryFields().get(0).setText("240.1");
        Technician.key(test, SWT.F7, (char) 0);
        after(test, measured);
        assertEquals("24.01 V would be inside. Is 240.1 V what the instrument shows?", test.shown().card().question());
    }

    private static final String FLASHING = """
            family tit "Tit" { lamp flt red "Fault" }
            procedure tit_lamp "The lamp of a tit" revision 1 {
                applies to tit
                stage work "Work" {
                    step open_loop "Watch the lamp." {
                        mark unplugged "Press as you pull the plug."
                        expect flt flashing slow within 4 s of unplugged
                        otherwise conclude rejected "An open loop is not noticed."
                    }
                }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    /** What counts is when the keys were pressed, as the keyboard tells it, however late the window comes to them. */
    @Test
    void aLampIsTappedAlongWithTheSpaceBar(@TempDir Path folder) throws Exception {
        OpenTest test = Technician.open(Files.writeString(folder.resolve("tit.procedure"), FLASHING).toString(), "A8-700001", true);
        Answers answers = Answers.of("a8-accepted");
        while (!test.shown().tapsAlong()) {
            Technician.answer(test, answers);
        }
        Shown asked = Technician.seen(test);
        Text field = Screen.entryFields().get(0);
        // The keyboard's clock runs over between two of them.
        int pressed = Integer.MAX_VALUE - 2000;
        for (int i = 0; i < 5; i++) {
            Event tap = new Event();
            tap.character = ' ';
            tap.keyCode = ' ';
            tap.time = pressed;
            field.notifyListeners(SWT.KeyDown, tap);
            pressed += 1600;
        }
        assertEquals("\u00b7\u00b7\u00b7\u00b7\u00b7", field.getText());
        Screen.key(field, SWT.CR, '\r');
        after(test, asked);
        assertTrue(words(test).stream().anyMatch(each -> each.contains("tapped 5 times along with the lamp")), words(test).toString());
        assertTrue(words(test).stream().anyMatch(each -> each.endsWith("as expected") && each.contains("flashing slow")), words(test).toString());
    }

    @Test
    void whoeverComesBackToAUnitScansItFirst() throws Exception {
        OpenTest first = Technician.open(Technician.C16, "C16-700002", false);
        OpenTest second = Technician.open(Technician.C16, "C16-700003", false);
        Screen.waitFor("both on the bench", () -> Technician.desk().units().stream().filter(unit -> unit.serial().startsWith("C16-70000")).count() >= 2);
        Shown before = first.shown();
        // What is still to be written down keeps the test from asking; until it does, no answer to what it asked before is taken.
        IntStream.range(0, 20).forEach(i -> first.note("seen " + i));
        Technician.desk().select(first.id());
        Screen.settle();
        assertTrue(Screen.entryFields().isEmpty() || asksScan(first), "what is typed now would be refused");
        Screen.waitFor("which unit this is", () -> asksScan(first));
        assertEquals(before.version() + 21, Technician.seen(first).version());
        assertTrue(first.shown().card().question().startsWith("Scan or type the serial number"), first.shown().card().question());
        Shown asked = first.shown();
        Technician.enter(first, "C16-700003");
        Screen.waitFor("refused", () -> first.shown().last().refused().isPresent());
        assertEquals(asked.version(), first.shown().version());
        Technician.enter(first, "C16-700002");
        after(first, asked);
        assertFalse(first.shown().card().question().startsWith("Scan"));
        assertTrue(words(first).contains("Unit identified: C16-700002"), words(first).toString());
    }

    @Test
    void aPositionAndAHandOverAreTypedLikeANote() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700004", true);
        Shown before = test.shown();
        Technician.enter(test, "@ A 3");
        after(test, before);
        Shown placed = test.shown();
        Technician.enter(test, "> TM");
        after(test, placed);
        assertTrue(words(test).containsAll(List.of("Put in position A 3", "Taken over from QN")), words(test).toString());
        Screen.waitFor("the position in the list", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(test.id()) && unit.position().equals(java.util.Optional.of("A 3")) && unit.technician().equals("TM")));
    }

    @Test
    void whoeverSignsInIsToldOfAWrongPasswordAndMayTryAgain() throws Exception {
        // Makes sure that there are people.
        Technician.open(Technician.C16, "C16-700006", false);
        Desk desk = Technician.desk();
        try {
            Dialogs.answered("Sign in", () -> Screen.window().getService(IHandlerService.class)
                    .executeCommand("org.benchwright.ui.signIn", null), dialog -> {
                        List<Text> fields = Screen.all(dialog, Text.class).stream().filter(Text::getEditable).toList();
                        fields.get(0).setText("RB");
                        fields.get(1).setText("not this one");
                        fields.get(2).setText("4711");
                        Signer.ok(dialog);
                        Screen.waitFor("the refusal", () -> fields.get(1).isEnabled());
                        assertEquals("", fields.get(1).getText());
                        assertFalse(Signer.message(dialog).contains("Opening the key"), Signer.message(dialog));
                        assertEquals(Optional.empty(), desk.station().person());
                        fields.get(1).setText(Approved.PASSWORD);
                        Signer.ok(dialog);
                        Screen.waitFor("the end", dialog::isDisposed);
                    });
            assertEquals(Optional.of("RB"), desk.station().person());
            assertFalse(desk.station().locked());
        } finally {
            desk.station().signOut();
            desk.stationChanged();
            Screen.settle();
        }
    }

    @Test
    void aLockedStationTakesNothingButMakeSafe() throws Exception {
        OpenTest held = Technician.open(Technician.C16, "C16-700005", false);
        Desk desk = Technician.desk();
        try {
            desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
            desk.station().lock();
            desk.stationChanged();
            Screen.settle();
            assertEquals(List.of(), Screen.entryFields());
            Screen.window().getService(IHandlerService.class).executeCommand("org.benchwright.ui.makeSafe", null);
            Screen.settle();
            Shown before = held.shown();
            Screen.enter("smell of burning");
            after(held, before);
            assertTrue(held.shown().card().place().startsWith("Make safe"), held.shown().card().place());
        } finally {
            desk.station().signOut();
            desk.stationChanged();
            Screen.settle();
        }
        assertFalse(Screen.entryFields().isEmpty());
    }

    /** Signing out is no way past the lock. */
    @Test
    void whoeverHasSignedInSignsOutUnlessTheStationIsLocked() throws Exception {
        Desk desk = Technician.desk();
        Technician.open(Technician.C16, "C16-700006", false);
        try {
            desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
            Screen.command("org.benchwright.ui.lock");
            Screen.command("org.benchwright.ui.signOut");
            assertTrue(desk.station().locked());
            assertEquals(List.of(), Screen.entryFields());
            desk.station().signIn(desk.ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
            Screen.command("org.benchwright.ui.signOut");
            assertEquals(Optional.empty(), desk.station().person());
            Screen.waitFor("the entry", () -> !Screen.entryFields().isEmpty());
        } finally {
            desk.station().signOut();
            desk.stationChanged();
            Screen.settle();
        }
    }

    @Test
    void aRoundLeavesALookWithReadingsToTheCard() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700006", true);
        Answers answers = Answers.of("accepted");
        Technician.answerUntil(test, answers, "endurance.look");
        test.place("B 7");
        Screen.waitFor("on soak", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(test.id()) && unit.nextLook().isPresent() && unit.position().isPresent()));
        Screen.command("org.benchwright.ui.rounds");
        Table rounds = Screen.one(Table.class, table -> table.getColumnCount() == 4 && table.getColumn(0).getText().equals("Position"));
        Screen.waitFor("the round", () -> Stream.of(rounds.getItems()).anyMatch(item -> item.getText(1).equals("C16-700006")));
        int row = IntStream.range(0, rounds.getItemCount()).filter(i -> rounds.getItem(i).getText(1).equals("C16-700006")).findFirst().orElseThrow();
        assertEquals("B 7", rounds.getItem(row).getText(0));
        rounds.setSelection(row);
        Technician.desk().select("");
        Screen.key(rounds, ' ', ' ');
        Screen.waitFor("its card: this soak has readings, so its look is answered there", () -> Technician.desk().selected().equals(test.id())
                && Screen.page().getActivePart().getSite().getId().equals(Ids.CARD_VIEW));
        Screen.page().hideView(Screen.page().findView(Ids.ROUNDS_VIEW));
    }

    @Test
    void allUnitsAreMadeSafeEachWithItsOwnEvents() throws Exception {
        OpenTest first = Technician.open(Technician.C16, "C16-700007", true);
        OpenTest second = Technician.open(Technician.C16, "C16-700008", true);
        Screen.waitFor("both listed", () -> Technician.desk().units().stream().map(unit -> unit.test()).toList().containsAll(List.of(first.id(), second.id())));
        first.makeSafe("one of them is being made safe already");
        Screen.waitFor("the first", () -> first.shown().card().place().startsWith("Make safe"));
        String third = elsewhere("C16-700009");
        Screen.perspective(Ids.AUDIT);
        Dialogs.answered("Make all units safe", () -> Screen.window().getService(IHandlerService.class).executeCommand("org.benchwright.ui.makeAllSafe", null),
                dialog -> {
                    assertFalse(dialog.getDefaultButton().isEnabled(), "a reason is needed");
                    Screen.all(dialog, Text.class).stream().filter(Text::getEditable).findFirst().orElseThrow().setText("fire alarm");
                    Signer.ok(dialog);
                });
        Screen.waitFor("the second", () -> second.shown().card().place().startsWith("Make safe"));
        assertTrue(words(second).stream().anyMatch(each -> each.contains("fire alarm")), words(second).toString());
        assertFalse(words(first).stream().anyMatch(each -> each.contains("fire alarm")), "it was being made safe before");
        Screen.waitFor("the one that was not open here", () -> Technician.desk().held(third)
                .filter(test -> test.shown().card().place().startsWith("Make safe")).isPresent());
        assertTrue(words(Technician.desk().held(third).orElseThrow()).stream().anyMatch(each -> each.contains("fire alarm")));
    }

    /** A test that somebody has begun at a terminal. */
    private static String elsewhere(String serial) throws Exception {
        Reading.Ready ready = (Reading.Ready) new ProcedureReader(LanguageServices.create()).read(Technician.procedures().resolve(Technician.C16));
        try (Bench terminal = Bench.open(Technician.desk().ledger(), Bench.Clocks.system())) {
            String test = terminal.begin(ready.plan(), ready.text(), new Bench.Work(serial, "TM", "terminal", "another face", true)).test();
            Screen.waitFor(serial, () -> Technician.desk().units().stream().anyMatch(unit -> unit.test().equals(test)));
            return test;
        }
    }

    @Test
    void oneUnitOfSeveralIsHandedOverAndTheOthersAreNot() throws Exception {
        OpenTest stays = Technician.open(Technician.C16, "C16-700010", true);
        OpenTest goes = Technician.open(Technician.C16, "C16-700011", true);
        Shown before = goes.shown();
        Technician.enter(goes, "> TM");
        after(goes, before);
        Screen.waitFor("who has which", () -> holder(goes).equals("TM") && holder(stays).equals("QN"));
        assertTrue(words(goes).contains("Taken over from QN"), words(goes).toString());
        assertFalse(words(stays).stream().anyMatch(each -> each.startsWith("Taken over")), words(stays).toString());
        Technician.answer(goes, Answers.of("accepted"));
        assertEquals("TM", goes.shown().soFar().stream().filter(line -> !line.who().isEmpty()).reduce((one, other) -> other).orElseThrow().who());
        Technician.look(stays);
        Technician.answer(stays, Answers.of("accepted"));
        assertEquals("QN", stays.shown().soFar().stream().filter(line -> !line.who().isEmpty()).reduce((one, other) -> other).orElseThrow().who());
    }

    private static String holder(OpenTest test) {
        return Technician.desk().units().stream().filter(unit -> unit.test().equals(test.id())).map(unit -> unit.technician()).findFirst().orElse("");
    }

    @Test
    void theKeyOfTheFootSwitchIsChosenInTheWindow() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700012", true);
        while (test.shown().kind() != EntryKind.DO) {
            Technician.answer(test, Answers.of("accepted"));
        }
        try {
            chooseFootSwitch("f13", false);
            Shown asked = test.shown();
            Technician.key(test, SWT.F7, (char) 0);
            Screen.settle();
            assertEquals(asked.version(), test.shown().version(), "F7 is not the foot switch any more");
            Technician.key(test, SWT.F13, (char) 0);
            after(test, asked);
            chooseFootSwitch("F12", true);
        } finally {
            chooseFootSwitch("", false);
        }
    }

    private static void chooseFootSwitch(String key, boolean refused) throws Exception {
        Dialogs.answered("Foot switch", () -> Screen.window().getService(IHandlerService.class).executeCommand("org.benchwright.ui.footSwitch", null), dialog -> {
            Screen.all(dialog, Text.class).stream().filter(Text::getEditable).findFirst().orElseThrow().setText(key);
            assertEquals(refused, !dialog.getDefaultButton().isEnabled(), "make safe keeps its key");
            if (refused) {
                dialog.close();
            } else {
                Signer.ok(dialog);
            }
        });
    }

    @Test
    void aStationThatNobodyTouchesLocksItselfWhateverTheWindowShows() throws Exception {
        Technician.register();
        Screen.perspective(Ids.AUDIT);
        MovedTime time = new MovedTime();
        StationSignIn station = new StationSignIn(new Bench.Clocks(time, time, time));
        station.signIn(Technician.desk().ledger(), "RB", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        AtomicInteger told = new AtomicInteger();
        Shell window = new Shell(Display.getCurrent());
        try {
            IdleLock.begin(window, station, told::incrementAndGet);
            time.advance(StationSignIn.IDLE.minusSeconds(1));
            // A hand on a key of any window of the program.
            Screen.key(Screen.window().getShell(), 'a', 'a');
            time.advance(StationSignIn.IDLE.minusSeconds(1));
            Screen.waitForDrawing();
            assertFalse(station.locked());
            time.advance(Duration.ofSeconds(1));
            Screen.waitFor("the lock", station::locked);
            assertEquals(1, told.get());
        } finally {
            window.dispose();
        }
    }
}
