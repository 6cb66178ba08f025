package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.language.LanguageServices;
import org.benchwright.language.ProcedureReader;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.benchwright.present.TimelineLine;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Several units on one bench: the right one is answered for, each has its place and its holder, and all are made safe at once. */
@ExtendWith(QuietLog.class)
class SeveralUnitsWindowTest {

    private static boolean asksScan(OpenTest test) {
        return test.shown().card().question().startsWith("Scan or type the serial number");
    }

    private static List<String> words(OpenTest test) {
        return test.shown().soFar().stream().map(TimelineLine::words).toList();
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
        Technician.after(first, asked);
        assertFalse(first.shown().card().question().startsWith("Scan"));
        assertTrue(words(first).contains("Unit identified: C16-700002"), words(first).toString());
    }

    @Test
    void aPositionAndAHandOverAreTypedLikeANote() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700004", true);
        Shown before = test.shown();
        Technician.enter(test, "@ A 3");
        Technician.after(test, before);
        Shown placed = test.shown();
        Technician.enter(test, "> TM");
        Technician.after(test, placed);
        assertTrue(words(test).containsAll(List.of("Put in position A 3", "Taken over from QN")), words(test).toString());
        Screen.waitFor("the position in the list", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(test.id()) && unit.position().equals(Optional.of("A 3")) && unit.technician().equals("TM")));
    }

    @Test
    void oneUnitOfSeveralIsHandedOverAndTheOthersAreNot() throws Exception {
        OpenTest stays = Technician.open(Technician.C16, "C16-700010", true);
        OpenTest goes = Technician.open(Technician.C16, "C16-700011", true);
        Shown before = goes.shown();
        Technician.enter(goes, "> TM");
        Technician.after(goes, before);
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
    void allUnitsAreMadeSafeEachWithItsOwnEvents() throws Exception {
        OpenTest first = Technician.open(Technician.C16, "C16-700007", true);
        OpenTest second = Technician.open(Technician.C16, "C16-700008", true);
        Screen.waitFor("both listed", () -> Technician.desk().units().stream().map(unit -> unit.test()).toList().containsAll(List.of(first.id(), second.id())));
        first.makeSafe("one of them is being made safe already");
        Screen.waitFor("the first", () -> first.shown().card().place().startsWith("Make safe"));
        String third = elsewhere("C16-700009");
        Screen.perspective(Ids.AUDIT);
        Dialogs.answered("Make all units safe", () -> Screen.command("org.benchwright.ui.makeAllSafe"),
                dialog -> {
                    assertFalse(dialog.getDefaultButton().isEnabled(), "a reason is needed");
                    Dialogs.fields(dialog).get(0).setText("fire alarm");
                    Dialogs.enter(dialog);
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
}
