package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

import org.benchwright.present.UnitRow;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.app.Leaving;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.WaitingStart;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Several units in New test: the first opens now, the others wait and open by themselves. */
@ExtendWith(QuietLog.class)
class BatchWindowTest {

    private static final String ASKED = "Tests not begun";

    @AfterEach
    void nothingWaits() {
        Technician.desk().waiting().forEach(start -> Technician.desk().takeOff(start.serial()));
    }

    /** Fills New test in; it closes once the first test is open. */
    private static OpenTest begin(String serials, String apart) throws Exception {
        Screen.perspective(Ids.BENCH);
        Dialogs.answered("New test", () -> Screen.command("org.benchwright.ui.newTest"), dialog -> {
            Combo procedures = Screen.all(dialog, Combo.class).get(0);
            procedures.select(procedures.indexOf(Technician.C16));
            assertEquals(2, Dialogs.fields(dialog).size(), "one unit is not asked how far apart");
            Dialogs.fields(dialog).get(0).setText(serials);
            assertTrue(Dialogs.words(dialog).contains("once it is closed they are not begun"), Dialogs.words(dialog));
            Dialogs.fields(dialog).get(1).setText("QN");
            Text distance = Dialogs.fields(dialog).get(2);
            distance.setText(apart);
            assertTrue(distance.getBounds().y + distance.getSize().y <= distance.getParent().getClientArea().height, "it is in sight");
            Dialogs.box(dialog).setSelection(true);
            Dialogs.press(dialog, "Open");
        });
        return Technician.desk().selectedTest().orElseThrow();
    }

    private static Table units() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 1);
    }

    private static Optional<String> row(String serial) {
        for (int i = 0; i < units().getItemCount(); i++) {
            if (units().getItem(i).getText().startsWith(serial)) {
                return Optional.of(units().getItem(i).getText());
            }
        }
        return Optional.empty();
    }

    private static void select(String serial) {
        for (int i = 0; i < units().getItemCount(); i++) {
            if (units().getItem(i).getText().startsWith(serial)) {
                Screen.select(units(), i);
                return;
            }
        }
        throw new AssertionError(serial + " is not in the list");
    }

    private static void enter(String serial) {
        select(serial);
        Event event = new Event();
        event.item = units().getSelection()[0];
        units().notifyListeners(SWT.DefaultSelection, event);
    }

    private static Consumer<Shell> pressing(String button, List<String> words) {
        return dialog -> {
            words.add(Dialogs.words(dialog));
            Dialogs.press(dialog, button);
        };
    }

    private static void delete(String serial, String button) throws Exception {
        select(serial);
        Dialogs.answered(ASKED, () -> Screen.key(units(), SWT.DEL, SWT.DEL), pressing(button, new ArrayList<>()));
    }

    private static boolean onBench(String serial) {
        return Technician.desk().units().stream().anyMatch(unit -> unit.serial().equals(serial));
    }

    private static Instant opened(String serial) {
        String id = Technician.desk().units().stream().filter(unit -> unit.serial().equals(serial)).map(UnitRow::test).findFirst().orElseThrow();
        return Technician.desk().held(id).orElseThrow().shown().soFar().get(0).instant();
    }

    @Test
    void theOthersOpenByThemselvesAtTheirDistanceAndTheCardStaysWhereItIs() throws Exception {
        OpenTest first = begin("C16-520001 C16-520002\nC16-520003", "2 s");
        assertEquals("C16-520001", first.shown().serial());
        Screen.waitFor("all three are on the bench", () -> onBench("C16-520002") && onBench("C16-520003") && Technician.desk().waiting().isEmpty());
        assertEquals(first.id(), Technician.desk().selected());
        Technician.seen(first);
        Duration second = Duration.between(opened("C16-520001"), opened("C16-520002"));
        Duration third = Duration.between(opened("C16-520002"), opened("C16-520003"));
        assertTrue(second.toMillis() >= 2000 && third.toMillis() >= 2000, second + " " + third);
        Screen.waitFor("the rows", () -> row("C16-520003").filter(words -> !words.contains("begins")).isPresent());
    }

    @Test
    void oneThatWaitsIsBegunAtOnceTakenOffOrToldWhyNotAndWhoeverLeavesIsToldWhich() throws Exception {
        begin("C16-520011, C16-520012, C16-520013, C16-520014", "1 h");
        Screen.waitFor("they wait", () -> row("C16-520012").isPresent());
        assertTrue(row("C16-520012").orElseThrow().replaceAll("\\s+", " ").matches("C16-520012, rehearsal begins (\\d+ \\w+ )?\\d\\d:\\d\\d, in (1 h|5\\d min) Enter begins .*"),
                row("C16-520012").orElseThrow());

        delete("C16-520014", "No");
        assertTrue(row("C16-520014").isPresent());
        delete("C16-520014", "Yes");
        Screen.waitFor("it is off the list", () -> row("C16-520014").isEmpty());

        String card = Technician.desk().selected();
        enter("C16-520012");
        Screen.waitFor("it is open", () -> onBench("C16-520012") && Technician.desk().waiting().size() == 1);
        assertEquals(card, Technician.desk().selected());

        Technician.open(Technician.C16, "C16-520013", true);
        Screen.waitFor("it waits still", () -> Technician.desk().waiting().size() == 1);
        enterWaiting("C16-520013");
        Screen.waitFor("why not", () -> Technician.desk().waiting().stream().anyMatch(start -> start.refused().isPresent()));
        WaitingStart refused = Technician.desk().waiting().get(0);
        assertTrue(refused.refused().orElseThrow().startsWith("C16-520013 is open already in test "), refused.refused().orElseThrow());
        Screen.waitFor("in the row", () -> units().getItem(units().getItemCount() - 1).getText().replace('\n', ' ').contains("NOT BEGUN: C16-520013 is open already"));

        assertFalse(leaves("Stay"));
        assertTrue(leaves("Close anyway"));
    }

    /** The last row: the unit itself is on the bench, too. */
    private static void enterWaiting(String serial) {
        Screen.settle();
        Event event = new Event();
        event.item = units().getItem(units().getItemCount() - 1);
        assertTrue(units().getItem(units().getItemCount() - 1).getText().startsWith(serial));
        units().notifyListeners(SWT.DefaultSelection, event);
    }

    /** Whether the window may be closed; units that other tests have left energised are asked about first. */
    private static boolean leaves(String button) throws Exception {
        List<String> words = new ArrayList<>();
        List<Boolean> may = new ArrayList<>();
        if (!Technician.desk().live().isEmpty()) {
            Dialogs.when("Energised", pressing("Close anyway", new ArrayList<>()));
        }
        Dialogs.answered(ASKED, () -> may.add(new Leaving(Screen.window(), Technician.desk()).may()), pressing(button, words));
        assertTrue(words.get(0).contains("C16-520013: NOT BEGUN") && words.get(0).contains("Once it is closed they are not begun."), words.get(0));
        return may.get(0);
    }
}
