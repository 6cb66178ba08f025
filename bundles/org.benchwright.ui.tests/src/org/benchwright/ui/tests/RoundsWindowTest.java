package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.bench.RoundsView;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.house.Scanned;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A round along the rack: one key for each unit that is as expected. */
@ExtendWith(QuietLog.class)
class RoundsWindowTest {

    @TempDir
    private Path folder;

    private static Table rounds() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 4 && table.getColumn(0).getText().equals("Position"));
    }

    private static void begin() throws Exception {
        Screen.command("org.benchwright.ui.rounds");
        Screen.waitFor("the round", () -> rounds().getItemCount() > 0);
    }

    @AfterEach
    void end() {
        Screen.page().hideView(Screen.page().findView(Ids.ROUNDS_VIEW));
    }

    private static int row(String serial) {
        return IntStream.range(0, rounds().getItemCount()).filter(i -> rounds().getItem(i).getText(1).equals(serial)).findFirst()
                .orElseThrow(() -> new AssertionError(serial + " is not in the round"));
    }

    private static String cell(String serial, int column) {
        return rounds().getItem(row(serial)).getText(column);
    }

    private static String selected() {
        return rounds().getSelection()[0].getText(1);
    }

    private static boolean told(String words) {
        return Screen.all(Label.class).anyMatch(label -> label.getText().equals(words));
    }

    private static List<TimelineLine> looks(OpenTest test) {
        return test.shown().soFar().stream().filter(line -> line.words().startsWith("endurance: ")).toList();
    }

    @Test
    void eachUnitThatIsAsExpectedTakesOneKeyAndHasItsOwnEventAndInstant() throws Exception {
        Path procedure = Rack.procedure(folder, "24 h");
        OpenTest third = Rack.onSoak(procedure, "K-330003", "R 10");
        OpenTest first = Rack.onSoak(procedure, "K-330001", "R 1");
        OpenTest second = Rack.onSoak(procedure, "K-330002", "R 2");
        begin();
        assertEquals(List.of("R 1", "R 2", "R 10"), Stream.of(rounds().getItems()).map(item -> item.getText(0)).filter(at -> at.startsWith("R ")).toList());
        rounds().setSelection(row("K-330001"));
        rounds().notifyListeners(SWT.Selection, new Event());
        assertTrue(told("R 1 has to show: mode run (RUN (Running) green steady)"), "what to see is told");
        for (OpenTest test : List.of(first, second)) {
            assertEquals(test.shown().serial(), selected());
            Screen.key(rounds(), ' ', ' ');
            Screen.waitFor("on record", () -> told(test.shown().serial() + ": as expected, on record"));
            assertEquals(2, looks(test).size(), looks(test).toString());
            assertTrue(cell(test.shown().serial(), 3).startsWith("as expected, "), cell(test.shown().serial(), 3));
        }
        assertEquals("K-330003", selected(), "on to the next unit");
        Screen.key(rounds(), 'n', 'n');
        Screen.waitFor("its card", () -> Technician.desk().selected().equals(third.id()) && Screen.page().getActivePart().getSite().getId().equals(Ids.CARD_VIEW));
        assertEquals(1, looks(third).size(), "nothing is on record of it yet");
        Shown arrived = Technician.seen(third);
        assertTrue(arrived.card().question().startsWith("Scan or type the serial number"), arrived.card().question());
        Technician.enter(third, "K-330003");
        Screen.waitFor("the unit is known", () -> third.shown().version() > arrived.version());
        Shown known = Technician.seen(third);
        Technician.enter(third, "n");
        Screen.waitFor("what it shows: " + third.shown().last(), () -> third.shown().version() > known.version());
        assertTrue(third.shown().last().refused().isEmpty(), third.shown().last().toString());
        assertTrue(Stream.of(first, second).map(test -> looks(test).get(1)).map(line -> line.instant() + line.who()).distinct().count() == 2,
                "each its own instant");
        begin();
        assertEquals("on the step card", Stream.of(rounds().getItems()).filter(item -> item.getText(1).equals("K-330003")).map(item -> item.getText(3))
                .findFirst().orElse("on the step card"));
    }

    @Test
    void aUnitWithoutAPositionIsScannedFirst() throws Exception {
        OpenTest test = Rack.onSoak(Rack.procedure(folder, "24 h"), "K-330004", "");
        begin();
        rounds().setSelection(row("K-330004"));
        Screen.key(rounds(), ' ', ' ');
        Screen.settle();
        assertTrue(told("K-330004 has no position: scan it first, then Space."));
        assertEquals(1, looks(test).size());
        Scanned.show(Screen.window(), "K-330004");
        Screen.waitFor("the scan on record", () -> test.shown().soFar().stream().anyMatch(line -> line.words().equals("Unit identified: K-330004")));
        assertTrue(Screen.page().getActivePart() instanceof RoundsView, "the round stays in front");
        assertEquals("K-330004", selected());
        Screen.key(rounds(), ' ', ' ');
        Screen.waitFor("the look", () -> looks(test).size() == 2);
    }

    @Test
    void theLetterNFromAScannerIsNotAnAnswer() throws Exception {
        OpenTest test = Rack.onSoak(Rack.procedure(folder, "24 h"), "K-330005", "R 5");
        begin();
        rounds().setSelection(row("K-330005"));
        Technician.desk().select("");
        Screen.key(rounds(), 'n', 'N');
        Screen.key(rounds(), '1', '1');
        Screen.waitForDrawing();
        assertNotEquals(test.id(), Technician.desk().selected());
        assertEquals("", cell("K-330005", 3));
    }

    @Test
    void aUnitThatIsNotOpenHereIsTakenUpAndWhatIsAskedFirstIsAskedOnItsCard() throws Exception {
        Path procedure = Rack.procedure(folder, "24 h");
        Technician.open(Technician.C16, "C16-330007", true);
        Technician.approve(procedure.toString());
        String id = Rack.elsewhere(procedure, "K-330006", "R 6");
        Screen.waitFor("it is on soak", () -> Technician.desk().units().stream().anyMatch(unit -> unit.test().equals(id) && unit.position().isPresent()));
        begin();
        rounds().setSelection(row("K-330006"));
        Screen.key(rounds(), ' ', ' ');
        Screen.waitFor("its card", () -> Technician.desk().selected().equals(id) && Screen.page().getActivePart().getSite().getId().equals(Ids.CARD_VIEW));
        OpenTest here = Technician.desk().held(id).orElseThrow();
        assertEquals(1, looks(here).size(), "whether it was on all the time comes first");
        assertTrue(here.shown().soFar().stream().anyMatch(line -> line.words().equals("Taken over from TM") || line.words().contains("interrupt")
                || line.who().equals("QN")), here.shown().soFar().toString());
    }

    @Test
    void aRoundLeavesALookWithReadingsToTheCard() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-700013", true);
        Answers answers = Answers.of("accepted");
        Technician.answerUntil(test, answers, "endurance.look");
        test.place("B 7");
        Screen.waitFor("on soak", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(test.id()) && unit.nextLook().isPresent() && unit.position().isPresent()));
        begin();
        Screen.waitFor("its row", () -> Stream.of(rounds().getItems()).anyMatch(item -> item.getText(1).equals("C16-700013")));
        assertEquals("B 7", cell("C16-700013", 0));
        rounds().setSelection(row("C16-700013"));
        Technician.desk().select("");
        Screen.key(rounds(), ' ', ' ');
        Screen.waitFor("its card: this soak has readings, so its look is answered there", () -> Technician.desk().selected().equals(test.id())
                && Screen.page().getActivePart().getSite().getId().equals(Ids.CARD_VIEW));
    }
}
