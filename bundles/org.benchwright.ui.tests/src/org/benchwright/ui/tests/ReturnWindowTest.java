package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.RecordRow;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A unit that was accepted comes back, told on its record sheet. */
@ExtendWith(QuietLog.class)
class ReturnWindowTest {

    @Test
    void itCameBackIsToldOnTheRecordSheetOnce(@TempDir Path folder) throws Exception {
        OpenTest test = Auditor.test(folder, "F-300050", true);
        showSheet(test);
        Dialogs.answered("A unit came back", () -> Screen.press("It came back"), ReturnWindowTest::fill);
        String wanted = "back on " + LocalDate.now(ZoneId.systemDefault()) + ": stops when warm; fault confirmed";
        Screen.waitFor("the return on the sheet", () -> sheet().contains(wanted));
        assertFalse(back().isEnabled(), "it came back once");
        assertTrue(sheet().contains("returned, signed by "), sheet());
    }

    /** Shows the record sheet of a unit that is out there. */
    private static void showSheet(OpenTest test) throws Exception {
        Auditor.showSheet(test, test.shown().serial());
        Screen.waitFor("that it can come back", () -> back().isEnabled());
    }

    /** The dialog is gone before what was entered is on record; it is all the same, and nothing is logged. */
    @Test
    void whoClosesTheDialogAtOnceHasToldItNevertheless(@TempDir Path folder) throws Exception {
        OpenTest test = Auditor.test(folder, "F-300051", true);
        showSheet(test);
        Dialogs.answered("A unit came back", () -> Screen.press("It came back"), dialog -> {
            fill(dialog);
            dialog.close();
        });
        Screen.waitFor("the record", () -> {
            try (Bench bench = Bench.read(Technician.desk().ledger(), Bench.Clocks.system())) {
                return !bench.record(test.id()).orElseThrow().out();
            } catch (CannotStoreException e) {
                throw new AssertionError(e);
            }
        });
    }

    @Test
    void nothingCanBeToldOfASheetThatIsNotShownAnyMore(@TempDir Path folder) throws Exception {
        OpenTest test = Auditor.test(folder, "F-300052", true);
        showSheet(test);
        TableViewer records = (TableViewer) Screen.page().findView(Ids.RECORDS_VIEW).getSite().getSelectionProvider();
        RecordRow row = (RecordRow) records.getStructuredSelection().getFirstElement();
        RecordRow gone = new RecordRow("T-XXXXX-XXXXX", row.serial(), row.family(), row.procedure(), row.technician(), row.opened(), row.state(),
                row.rehearsal(), row.findable());
        records.setInput(List.of(gone));
        Screen.selectRecord(gone);
        Screen.waitFor("that it is not there", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("There is no test T-XXXXX-XXXXX")));
        assertFalse(back().isEnabled(), "the button is not about the sheet that was shown before");
    }

    private static void fill(Shell dialog) {
        List<Text> fields = Dialogs.fields(dialog);
        fields.get(1).setText("stops when warm");
        fields.get(2).setText("QN");
        Combo fault = Screen.all(dialog, Combo.class).get(0);
        fault.select(fault.indexOf("confirmed"));
        Dialogs.press(dialog, "Record");
    }

    private static Button back() {
        return Screen.one(Button.class, button -> button.getText().startsWith("It came back"));
    }

    private static String sheet() {
        return Screen.story("Unit F-3000");
    }
}
