package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.engine.record.RecordFact;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.SamplePhoto;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Units come in at the window: scanned one after the other, corrected, mended, and void where their acceptance is. */
@ExtendWith(QuietLog.class)
class HouseWindowTest {

    @AfterEach
    void closeWhatWasLeftOpen() {
        dialogs().forEach(Shell::close);
        Screen.settle();
    }

    private static List<Shell> dialogs() {
        return Stream.of(Display.getCurrent().getShells()).filter(shell -> shell.isVisible() && shell.getText().equals("Receive units")).toList();
    }

    private static List<String> rows() {
        return Stream.of(received().getItems()).map(item -> item.getText(0) + ": " + item.getText(1)).toList();
    }

    static Table received() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 7);
    }

    /** Shows the units in the house. */
    static void show() throws Exception {
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Screen.settle();
    }

    private static void receiving(Consumer<Shell> work) throws Exception {
        Dialogs.answered("Receive units", () -> Screen.press("Receive ..."), work);
    }

    /** Scans a unit into the dialog. */
    static void receive(Shell dialog, String serial) {
        Dialogs.fields(dialog).get(6).setText("QN");
        Text unit = Dialogs.fields(dialog).get(2);
        unit.setText(serial);
        Event enter = new Event();
        enter.detail = SWT.TRAVERSE_RETURN;
        enter.doit = true;
        unit.notifyListeners(SWT.Traverse, enter);
    }

    /** What was received just now. */
    static org.eclipse.swt.widgets.List done(Shell dialog) {
        return Screen.all(dialog, org.eclipse.swt.widgets.List.class).get(0);
    }

    /** Lets the dialog go on until something is so. */
    private static void untilIn(Shell dialog, String what, BooleanSupplier condition) {
        try {
            Screen.waitFor(what, condition);
        } catch (AssertionError late) {
            throw new AssertionError(late.getMessage() + " in: " + Dialogs.message(dialog), late);
        }
    }

    @Test
    void anOrderIsReceivedUnitByUnitAndWhatLooksWrongIsAskedAbout() throws Exception {
        show();
        receiving(dialog -> {
            Dialogs.fields(dialog).get(0).setText("O-114");
            Dialogs.fields(dialog).get(1).setText("Millbrook");
            Dialogs.fields(dialog).get(3).setText("stops when warm");
            receive(dialog, "\u0002C16-410001\u0003");
            untilIn(dialog, "the first unit", () -> done(dialog).getItemCount() == 1);
            assertEquals("", Dialogs.fields(dialog).get(3).getText(), "a complaint is of one unit");
            assertEquals("O-114", Dialogs.fields(dialog).get(0).getText(), "an order is of many");
            receive(dialog, "C16-410001");
            untilIn(dialog, "the duplicate", () -> Dialogs.message(dialog).contains("scanned twice"));
            receive(dialog, "C16-41");
            untilIn(dialog, "the question", () -> Dialogs.message(dialog).contains("does not look like a serial number of any family here"));
            receive(dialog, "C16-41");
            untilIn(dialog, "the second unit", () -> done(dialog).getItemCount() == 2);
            Dialogs.press(dialog, "Close");
        });
        Screen.waitFor("the rows", () -> rows().stream().anyMatch(row -> row.startsWith("C16-410001: ") && row.contains("waiting for its test"))
                && rows().stream().anyMatch(row -> row.startsWith("C16-41 (kept as typed)")));
    }

    /** Whoever scans the last unit and closes the dialog takes it for received. */
    @Test
    void aUnitThatIsRefusedBehindADialogThatIsClosedIsTold() throws Exception {
        show();
        String told = Dialogs.refusedBehind("Receive units", () -> Screen.press("Receive ..."), dialog -> receive(dialog, "C16-44"));
        assertTrue(told.contains("NOT received: C16-44: C16-44 does not look like"), told);
    }

    @Test
    void twelveUnitsAreScannedWithoutWaitingAndAColumnOfThemIsPasted() throws Exception {
        show();
        receiving(dialog -> {
            Dialogs.fields(dialog).get(0).setText("O-115");
            for (int i = 0; i < 12; i++) {
                receive(dialog, "C16-4101" + String.format("%02d", i));
            }
            untilIn(dialog, "twelve units", () -> done(dialog).getItemCount() == 12);
            Dialogs.fields(dialog).get(2).setFocus();
            Dialogs.fields(dialog).get(2).insert("C16-410112\r\nC16-41\n\nC16-42\nC16-410113\n");
            untilIn(dialog, "all of the column", () -> done(dialog).getItemCount() == 15);
            List<String> told = List.of(done(dialog).getItems());
            assertTrue(told.stream().anyMatch(line -> line.startsWith("NOT received: C16-42: C16-42 does not look like")), told.toString());
            assertEquals(14, told.stream().filter(line -> line.startsWith("R-")).count(), told.toString());
            assertEquals("C16-41", Dialogs.fields(dialog).get(2).getText(), "the first that looks wrong is asked about");
            assertTrue(Dialogs.message(dialog).contains("C16-41 does not look like"), Dialogs.message(dialog));
            Dialogs.press(dialog, "Close");
        });
        Screen.waitFor("the rows", () -> rows().stream().filter(row -> row.startsWith("C16-4101")).count() == 14);
        Screen.waitFor("in order", () -> rows().stream().filter(row -> row.startsWith("C16-4101")).map(row -> row.substring(8, 10)).toList()
                .equals(IntStream.range(0, 14).mapToObj(i -> String.format("%02d", i)).toList()));
    }

    // ---- corrections

    private static Shell signed(Shell dialog, String button) {
        Dialogs.press(dialog, button);
        Screen.waitFor("the dialog is done, or says why not: " + Dialogs.message(dialog), dialog::isDisposed);
        return dialog;
    }

    private static String story() {
        return Screen.all(StyledText.class).map(StyledText::getText).filter(text -> text.contains("received as R-")).findFirst().orElse("");
    }

    @Test
    void whatWasSaidOfAUnitIsSaidAnewAndAPhotoThatIsDroppedOnItIsAdded(@TempDir Path folder) throws Exception {
        show();
        receiving(dialog -> {
            Dialogs.fields(dialog).get(0).setText("O-116");
            Dialogs.fields(dialog).get(3).setText("hums");
            receive(dialog, "C16-410020");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            Dialogs.press(dialog, "Close");
        });
        Screen.waitFor("its row", () -> rows().stream().anyMatch(row -> row.startsWith("C16-410020")));
        pick("C16-410020");
        Dialogs.answered("Correct a receipt", () -> Screen.press("Correct ..."), dialog -> {
            assertEquals(List.of("O-116", "", "C16-410020", "hums", "", ""), Dialogs.fields(dialog).subList(0, 6).stream().map(Text::getText).toList());
            Dialogs.fields(dialog).get(0).setText("O-117");
            Dialogs.fields(dialog).get(7).setText("QN");
            Dialogs.press(dialog, "Correct");
            Screen.waitFor("a reason is asked", () -> dialog.getDefaultButton().isEnabled());
            assertTrue(Dialogs.message(dialog).contains("reason"), Dialogs.message(dialog));
            Dialogs.fields(dialog).get(6).setText("another order");
            signed(dialog, "Correct");
        });
        Screen.waitFor("the order", () -> Stream.of(received().getItems()).anyMatch(item -> item.getText(0).equals("C16-410020") && item.getText(3).equals("O-117")));
        pick("C16-410020");
        Path photo = Files.write(folder.resolve("dent.jpg"), SamplePhoto.of("a photo"));
        Dialogs.answered("Correct a receipt", () -> Drops.on(received(), photo), dialog -> {
            Dialogs.fields(dialog).get(7).setText("QN");
            signed(dialog, "Correct");
        });
        pick("C16-410020");
        Screen.waitFor("the photo", () -> story().contains("order O-117") && story().contains("complaint: hums") && story().contains("files: dent.jpg"));
    }

    @Test
    void aPhotoDroppedBesideAllUnitsIsOfOneThatIsReceivedNow(@TempDir Path folder) throws Exception {
        show();
        received().deselectAll();
        received().notifyListeners(SWT.Selection, new Event());
        Path photo = Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("a photo"));
        Dialogs.answered("Receive units", () -> Drops.on(received(), photo), dialog -> {
            Drops.on(Drops.target(dialog), write(folder, "back.jpg"));
            receive(dialog, "C16-410021");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            Dialogs.press(dialog, "Close");
        });
        Screen.waitFor("its row", () -> rows().stream().anyMatch(row -> row.startsWith("C16-410021")));
        pick("C16-410021");
        Screen.waitFor("both photos", () -> story().contains("files: plate.jpg, back.jpg"));
    }

    private static Path write(Path folder, String name) {
        try {
            return Files.write(folder.resolve(name), SamplePhoto.of("another photo"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    // ---- repair

    @Test
    void aRepairIsWrittenDownAndTheRetestTellsIt(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), Auditor.PROCEDURE);
        Path photo = Files.write(folder.resolve("board.jpg"), SamplePhoto.of("a photo"));
        show();
        receiving(dialog -> {
            Dialogs.fields(dialog).get(0).setText("O-7");
            receive(dialog, "F-410007");
            untilIn(dialog, "the question", () -> Dialogs.message(dialog).contains("does not look like"));
            receive(dialog, "F-410007");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            Dialogs.press(dialog, "Close");
        });
        Auditor.finish(Technician.open(file.toString(), "F-410007", false), "n");
        show();
        Screen.waitFor("rejected", () -> rows().stream().anyMatch(row -> row.startsWith("F-410007") && row.contains("rejected")));
        pick("F-410007");
        Dialogs.answered("Repaired", () -> Screen.press("Repaired ..."), dialog -> {
            Dialogs.fields(dialog).get(0).setText("power stage");
            Dialogs.fields(dialog).get(1).setText("C12, L-7\nQ3");
            Drops.on(Drops.target(dialog), photo);
            Dialogs.fields(dialog).get(2).setText("QN");
            signed(dialog, "Record");
        });
        Screen.waitFor("repaired", () -> rows().stream().anyMatch(row -> row.startsWith("F-410007") && row.contains("repaired, waiting for its retest")));
        pick("F-410007");
        Screen.waitFor("the repair in the story", () -> story().contains("power stage; C12 (lot L-7); Q3; files: board.jpg"));
        OpenTest retest = Technician.open(file.toString(), "F-410007", false);
        Screen.waitFor("the repair among the units on the bench", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(retest.id()) && unit.stage().equals("Work (repaired: power stage; C12 (lot L-7); Q3)")));
        Auditor.finish(retest, "y");
        show();
        Screen.waitFor("accepted", () -> rows().stream().anyMatch(row -> row.startsWith("F-410007") && row.contains("accepted")));
        pick("F-410007");
        Screen.waitFor("the story", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("power stage; C12 (lot L-7); Q3")
                && text.getText().contains("order O-7")));
    }

    @Test
    void aUnitWhoseAcceptanceWasMadeVoidIsNotCalledAcceptedAnyMore(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), Auditor.PROCEDURE);
        show();
        receiving(dialog -> {
            receive(dialog, "F-410023");
            untilIn(dialog, "the question", () -> Dialogs.message(dialog).contains("does not look like"));
            receive(dialog, "F-410023");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            Dialogs.press(dialog, "Close");
        });
        OpenTest test = Technician.open(file.toString(), "F-410023", false);
        Auditor.finish(test, "y");
        show();
        Screen.waitFor("accepted", () -> rows().stream().anyMatch(row -> row.startsWith("F-410023") && row.endsWith("accepted")));
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            ledger.afterSeal(BenchTime.real()).sign(test.id(), new RecordFact.Voided("mixed up with another unit"), Approved.by("KM"));
        }
        Screen.perspective(Ids.AUDIT);
        Screen.perspective(Ids.BENCH);
        Screen.page().activate(Screen.page().findView(Ids.CARD_VIEW));
        Screen.page().activate(Screen.page().showView(Ids.RECEIVED_VIEW));
        Screen.waitFor("not any more", () -> rows().stream().anyMatch(row -> row.startsWith("F-410023") && row.endsWith("its last test no longer counts, waiting for a new one")));
        pick("F-410023");
        Screen.waitFor("the story", () -> story().contains("accepted (void: it no longer counts)"));
        assertTrue(Screen.one(Button.class, button -> button.getText().equals("Test ...")).isEnabled());
    }

    /** Selects a unit, once it is there. */
    static void pick(String unit) {
        Screen.waitFor("the row of " + unit, () -> rows().stream().anyMatch(row -> row.startsWith(unit)));
        Table table = received();
        Screen.select(table, IntStream.range(0, table.getItemCount()).filter(i -> table.getItem(i).getText(0).startsWith(unit)).max().orElseThrow());
        Screen.settle();
    }
}
