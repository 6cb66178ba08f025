package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.CompletableFuture;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A unit that was accepted comes back, told on its record sheet. */
@ExtendWith(QuietLog.class)
class ReturnWindowTest {

    private static final String PROCEDURE = """
            family finch "Finch" { lamp pwr green "Power" }
            procedure finch_look "Finch at a glance" revision 1 {
                applies to finch
                stage work "Work" { step look "Look." { confirm "It is whole." or conclude rejected "It is broken." } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private static OpenTest accepted(Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), PROCEDURE);
        OpenTest test = Technician.open(file.toString(), "F-300050", false);
        while (test.shown().ending().isEmpty()) {
            Shown asked = Technician.seen(test);
            Screen.enter(asked.key().startsWith("off") ? "done" : "y");
            Screen.waitFor("after " + asked.key(), () -> test.shown().version() > asked.version());
            Screen.settle();
        }
        return test;
    }

    @Test
    void itCameBackIsToldOnTheRecordSheetOnce(@TempDir Path folder) throws Exception {
        OpenTest test = accepted(folder);
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Screen.press("Read again");
        Screen.one(Text.class, text -> (text.getStyle() & SWT.SEARCH) != 0).setText(test.id());
        Table records = Screen.one(Table.class, table -> table.getColumnCount() == 5);
        Screen.waitFor("the record", () -> records.getItemCount() == 1);
        Screen.selectRecord(records.getItem(0).getData());
        Screen.waitFor("the sheet", () -> !sheet().isEmpty() && back().isEnabled());
        CompletableFuture<String> answered = Dialogs.when("A unit came back", ReturnWindowTest::fill);
        back().notifyListeners(SWT.Selection, new Event());
        Screen.waitFor("the answer", answered::isDone);
        answered.get();
        String wanted = "back on " + LocalDate.now(ZoneId.systemDefault()) + ": stops when warm; fault confirmed";
        Screen.waitFor("the return on the sheet", () -> sheet().contains(wanted));
        assertFalse(back().isEnabled(), "it came back once");
        assertTrue(sheet().contains("returned, signed by "), sheet());
    }

    private static void fill(Shell dialog) {
        List<Text> fields = Screen.all(dialog, Text.class).stream().filter(Text::getEditable).toList();
        fields.get(1).setText("stops when warm");
        fields.get(2).setText("QN");
        Combo fault = Screen.all(dialog, Combo.class).get(0);
        fault.select(fault.indexOf("confirmed"));
        Screen.all(dialog, Button.class).stream().filter(button -> button.getText().replace("&", "").equals("OK")).findFirst().orElseThrow()
                .notifyListeners(SWT.Selection, new Event());
    }

    private static Button back() {
        return Screen.one(Button.class, button -> button.getText().startsWith("It came back"));
    }

    private static String sheet() {
        return Screen.all(StyledText.class).map(StyledText::getText).filter(text -> text.startsWith("Unit F-300050")).findFirst().orElse("");
    }
}
