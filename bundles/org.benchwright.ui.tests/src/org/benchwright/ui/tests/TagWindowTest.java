package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;

import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.house.House;
import org.benchwright.ui.internal.house.Scanned;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The tag of a unit, which tells everybody who passes where it stands. */
@ExtendWith(QuietLog.class)
class TagWindowTest {

    @Test
    void theTagOfAUnitInTheHouseIsMadeFromTheWindow(@TempDir Path folder) throws Exception {
        House house = PlatformUI.getWorkbench().getService(House.class);
        CompletableFuture<ReceivedRow> received = house.enter(receiving -> receiving.receive(new Receiving.Arriving("O-3330", "Mill race", "C16-333001", "read", true,
                true, "", "", "", "", List.of()), "QN"));
        Screen.waitFor("the receipt", received::isDone);
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Screen.settle();
        Scanned.show(Screen.window(), "C16-333001");
        Table units = Screen.one(Table.class, table -> table.getColumnCount() == 7 && table.isVisible());
        Screen.waitFor("its row", () -> units.getSelectionCount() == 1 && units.getSelection()[0].getText(0).startsWith("C16-333001"));
        assertEquals("\u2026 waiting for its test", units.getSelection()[0].getText(1));
        Path file = folder.resolve("tag.pdf");
        Dialogs.answered("Tag of C16-333001", () -> Screen.press("Tag ..."), dialog -> {
            List<Text> fields = Dialogs.fields(dialog);
            fields.get(0).setText("");
            fields.get(1).setText(file.toString());
            Dialogs.box(dialog).setSelection(false);
            Dialogs.enter(dialog);
            assertFalse(dialog.isDisposed(), "somebody has to be named");
            fields.get(0).setText("technician QN, 0100");
            Dialogs.enter(dialog);
        });
        Screen.waitFor("the tag", () -> Files.exists(file) && file.toFile().length() > 0);
        Screen.waitFor("all of it", () -> tail(file).contains("%%EOF"));
        assertTrue(new String(Files.readAllBytes(file), 0, 8, StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
        Screen.page().showView(Ids.CARD_VIEW);
    }

    private static String tail(Path file) {
        try {
            return new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
