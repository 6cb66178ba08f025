package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** An instrument is added, calibrated and retired at the window, each signed by an engineer. */
@ExtendWith(QuietLog.class)
class InstrumentsWindowTest {

    private static final String LIST = """
            asset,title,serial,ranges,custody,certificate,calibrated,due
            M-773,Voltmeter,V-4,"reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V; reads 0 V to 6 V dc, 0.02 % + 1 digit of 0.001 V",drawer 3,C-7,2026-05-31,2099-05-31
            M-774,Clamp meter,,"reads 0 A to 10 A dc, 1 % + 1 digit of 1 mA",drawer 3,,,
            """;

    private static Table instruments() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 6);
    }

    private static List<String> rows() {
        return Stream.of(instruments().getItems()).map(item -> item.getText(0) + " " + item.getText(1) + " " + item.getText(2) + " " + item.getText(4)).toList();
    }

    private static void sign(String press, String title, String... answers) throws Exception {
        Dialogs.answered(title, () -> Screen.press(press), dialog -> fill(dialog, answers));
    }

    private static void fill(Shell dialog, String... answers) {
        List<Text> fields = Dialogs.fields(dialog);
        for (int i = 0; i < answers.length; i++) {
            fields.get(i).setText(answers[i]);
        }
        fields.get(fields.size() - 2).setText("RB");
        fields.get(fields.size() - 1).setText(Approved.PASSWORD);
        Dialogs.press(dialog, "Sign");
        Screen.waitFor("the dialog closed, or " + Screen.all(dialog, Text.class), () -> dialog.isDisposed());
    }

    private static void pick(String asset) {
        Table table = instruments();
        for (int i = 0; i < table.getItemCount(); i++) {
            if (table.getItem(i).getText(0).equals(asset)) {
                Screen.select(table, i);
            }
        }
        Screen.settle();
    }

    @Test
    void anInstrumentIsAddedCalibratedAndRetired() throws Exception {
        Technician.register();
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.INSTRUMENTS_VIEW);
        sign("Add ...", "Add", "M-771", "Multimeter", "SN 4", "reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V; reads 0 A to 10 A dc, 1 % + 1 digit of 1 mA", "drawer 2");
        Screen.waitFor("the row", () -> rows().stream().anyMatch(row -> row.startsWith("M-771 Multimeter in service, no calibration")));
        pick("M-771");
        assertTrue(Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("reads 0 A to 10 A dc, 1 % of reading + 1 digit of 1 mA")));
        sign("Calibrated ...", "Calibrated", "C-9");
        Screen.waitFor("the calibration", () -> rows().contains("M-771 Multimeter in service C-9"));
        pick("M-771");
        sign("Retire ...", "Retire", "was dropped");
        Screen.waitFor("out of service", () -> rows().contains("M-771 Multimeter \u2717 out of service: was dropped C-9"));
        assertEquals(1, rows().stream().filter(row -> row.startsWith("M-771")).count());
        pick("M-771");
        sign("Reinstate ...", "Reinstate", "repaired and compared");
        Screen.waitFor("in service again", () -> rows().contains("M-771 Multimeter in service C-9"));
        pick("M-771");
        assertFalse(Screen.one(Button.class, button -> button.getText().equals("Reinstate ...")).isEnabled());
    }

    @Test
    void aListOfInstrumentsIsTakenInOrRefusedWithItsLine(@TempDir Path folder) throws Exception {
        Technician.register();
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.INSTRUMENTS_VIEW);
        Path list = Files.writeString(folder.resolve("register.csv"), LIST);
        Path bad = Files.writeString(folder.resolve("bad.csv"), LIST.replace("M-774", "=1+1"));
        Dialogs.answered("Import a list", () -> Drops.on(instruments(), bad), dialog -> {
            Dialogs.fields(dialog).get(0).setText("RB");
            Dialogs.fields(dialog).get(1).setText(Approved.PASSWORD);
            Dialogs.press(dialog, "Sign");
            Screen.waitFor("the refusal", () -> Dialogs.message(dialog).contains("Line 3: \"=1+1\" looks like a formula."));
            dialog.close();
        });
        Dialogs.answered("Import a list", () -> Drops.on(instruments(), list), dialog -> {
            Dialogs.press(dialog, "Sign");
            Screen.waitFor("somebody has a key, so the bench does not sign", () -> Dialogs.message(dialog).contains("engineer"));
            fill(dialog);
        });
        Screen.waitFor("the rows", () -> rows().containsAll(List.of("M-773 Voltmeter in service C-7", "M-774 Clamp meter in service, no calibration on record ")));
    }
}
