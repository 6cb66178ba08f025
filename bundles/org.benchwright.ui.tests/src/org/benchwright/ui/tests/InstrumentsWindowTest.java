package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** An instrument is added, calibrated and retired at the window, each signed by an engineer. */
@ExtendWith(QuietLog.class)
class InstrumentsWindowTest {

    private static Table instruments() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 6);
    }

    private static List<String> rows() {
        return Stream.of(instruments().getItems()).map(item -> item.getText(0) + " " + item.getText(1) + " " + item.getText(2) + " " + item.getText(4)).toList();
    }

    private static void sign(String press, String title, String... answers) {
        CompletableFuture<String> signed = Dialogs.when(title, dialog -> fill(dialog, answers));
        Screen.press(press);
        Screen.waitFor("the signature of " + press, signed::isDone);
        signed.join();
    }

    private static void fill(Shell dialog, String... answers) {
        List<Text> fields = Screen.all(dialog, Text.class).stream().filter(Text::getEditable).toList();
        for (int i = 0; i < answers.length; i++) {
            fields.get(i).setText(answers[i]);
        }
        fields.get(fields.size() - 2).setText("RB");
        fields.get(fields.size() - 1).setText(Approved.PASSWORD);
        Screen.all(dialog, Button.class).stream().filter(button -> (button.getStyle() & SWT.PUSH) != 0 && button.getText().replace("&", "").startsWith("Sign"))
                .findFirst().orElseThrow().notifyListeners(SWT.Selection, new Event());
        Screen.waitFor("the dialog closed, or " + Screen.all(dialog, Text.class), () -> dialog.isDisposed());
    }

    private static void people() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            if (ledger.people().isEmpty()) {
                Approved.people(ledger, BenchTime.real());
            }
        }
    }

    private static void pick(String asset) {
        Table table = instruments();
        for (int i = 0; i < table.getItemCount(); i++) {
            if (table.getItem(i).getText(0).equals(asset)) {
                table.setSelection(i);
                Event event = new Event();
                event.item = table.getItem(i);
                table.notifyListeners(SWT.Selection, event);
            }
        }
        Screen.settle();
    }

    @Test
    void anInstrumentIsAddedCalibratedAndRetired() throws Exception {
        people();
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.INSTRUMENTS_VIEW);
        sign("Add ...", "Add", "M-771", "Multimeter", "SN 4", "reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V; reads 0 A to 10 A dc, 1 % + 1 digit of 1 mA", "drawer 2");
        Screen.waitFor("the row", () -> rows().stream().anyMatch(row -> row.startsWith("M-771 Multimeter in service, no calibration")));
        pick("M-771");
        assertTrue(Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("reads 0 A to 10 A dc, 1 % of reading + 1 digits of 1 mA")));
        sign("Calibrated ...", "Calibrated", "C-9");
        Screen.waitFor("the calibration", () -> rows().contains("M-771 Multimeter in service C-9"));
        pick("M-771");
        sign("Retire ...", "Retire", "was dropped");
        Screen.waitFor("out of service", () -> rows().contains("M-771 Multimeter \u2717 out of service: was dropped C-9"));
        assertEquals(1, rows().stream().filter(row -> row.startsWith("M-771")).count());
    }
}
