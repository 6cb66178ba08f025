package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.concurrent.CompletableFuture;

import org.benchwright.present.UnitStory;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.house.House;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A scan finds its unit from anywhere in the window, and is typed into no place that is not meant. */
@ExtendWith(QuietLog.class)
class ScannerWindowTest {

    private static void scan(Control focus, String text, int gap) {
        int time = (int) (System.nanoTime() / 1_000_000);
        for (char c : (text + "\r").toCharArray()) {
            Event event = new Event();
            event.character = c;
            event.keyCode = c == '\r' ? SWT.CR : c;
            event.time = time += gap;
            event.doit = true;
            focus.notifyListeners(SWT.KeyDown, event);
        }
        Screen.settle();
    }

    /** What was taken for a scan is looked up in the house, and so is this behind it. */
    private static void whatWasScannedIsLookedUp() {
        CompletableFuture<UnitStory> behind = PlatformUI.getWorkbench().getService(House.class).ask(receiving -> receiving.look("C16-410099"));
        Screen.waitFor("what was scanned before", behind::isDone);
        Screen.settle();
    }

    @Test
    void aScanInAnyViewGoesToTheOpenTestOfThatUnit() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-410002", true);
        OpenTest other = Technician.open(Technician.C16, "C16-410003", true);
        assertEquals(other.id(), Technician.desk().selected());
        Screen.perspective(Ids.AUDIT);
        scan(Auditor.records(), "C16-410002", 120);
        whatWasScannedIsLookedUp();
        assertEquals(other.id(), Technician.desk().selected(), "that was typed by fingers");
        scan(Auditor.records(), "C16-410002", 5);
        Screen.waitFor("the test", () -> Technician.desk().selected().equals(test.id()));
        assertEquals(Ids.BENCH, Screen.page().getPerspective().getId());
        Technician.look(test);
    }

    @Test
    void aScannerTypesIntoAFieldThatHasTheFocusAndNowhereElse() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-410004", true);
        Technician.open(Technician.C16, "C16-410005", true);
        String selected = Technician.desk().selected();
        scan(Screen.entryFields().get(0), "C16-410004", 5);
        whatWasScannedIsLookedUp();
        assertEquals(selected, Technician.desk().selected());
        assertFalse(selected.equals(test.id()));
    }

    @Test
    void aScanOfAnUnknownUnitOffersToReceiveItAndAKnownOneIsShown() throws Exception {
        HouseWindowTest.show();
        Dialogs.answered("Receive units", () -> scan(HouseWindowTest.received(), "C16-410006", 5), dialog -> {
            assertEquals("C16-410006", Dialogs.fields(dialog).get(2).getText());
            Screen.waitFor("what is known", () -> Screen.all(dialog, StyledText.class).get(0).getText().contains("Nothing is on record of C16-410006"));
            HouseWindowTest.receive(dialog, "C16-410006");
            Screen.waitFor("the unit", () -> HouseWindowTest.done(dialog).getItemCount() == 1);
            Dialogs.press(dialog, "Close");
        });
        Screen.perspective(Ids.AUDIT);
        scan(Auditor.records(), "C16-410006", 5);
        Screen.waitFor("the receipt", () -> Ids.BENCH.equals(Screen.page().getPerspective().getId())
                && Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("C16-410006") && text.getText().contains("received as R-")));
        Screen.waitFor("its row", () -> selected().startsWith("C16-410006"));
    }

    private static String selected() {
        TableItem[] items = HouseWindowTest.received().getSelection();
        return items.length == 0 ? "" : items[0].getText(0);
    }
}
