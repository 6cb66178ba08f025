package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

import org.benchwright.engine.record.RecordFact;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.benchwright.ui.internal.house.CameraFolder;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.SamplePhoto;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.List;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Units come in at the window: by keyboard and by scanner, are mended, and found by a scan from anywhere. */
@ExtendWith(QuietLog.class)
class HouseWindowTest {

    @AfterEach
    void closeWhatWasLeftOpen() {
        dialogs().forEach(Shell::close);
        Screen.settle();
    }

    private static java.util.List<Shell> dialogs() {
        return Stream.of(Display.getCurrent().getShells()).filter(shell -> shell.isVisible() && shell.getText().equals("Receive units")).toList();
    }

    private static java.util.List<String> rows() {
        return Stream.of(received().getItems()).map(item -> item.getText(0) + ": " + item.getText(1)).toList();
    }

    private static Table received() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 7);
    }

    private static void show() throws Exception {
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Screen.settle();
    }

    /** Works in the dialog from a timer, since it has the thread to itself, and waits until it was closed. */
    private static void inDialog(String press, java.util.function.Consumer<Shell> work) {
        CompletableFuture<String> worked = Dialogs.when("Receive units", work);
        Screen.press(press);
        Screen.waitFor("the dialog", worked::isDone);
        worked.join();
    }

    private static void receive(Shell dialog, String serial) {
        fields(dialog).get(6).setText("QN");
        Text unit = fields(dialog).get(2);
        unit.setText(serial);
        Event enter = new Event();
        enter.detail = SWT.TRAVERSE_RETURN;
        enter.doit = true;
        unit.notifyListeners(SWT.Traverse, enter);
    }

    private static java.util.List<Text> fields(Shell dialog) {
        return Screen.all(dialog, Text.class).stream().filter(Text::getEditable).toList();
    }

    private static List done(Shell dialog) {
        return Screen.all(dialog, List.class).get(0);
    }

    private static String said(Shell dialog) {
        return Screen.all(dialog, Text.class).stream().filter(text -> !text.getEditable()).map(Text::getText).reduce("", (a, b) -> a + b);
    }

    /** Lets the dialog go on until something is so. */
    private static void untilIn(Shell dialog, String what, java.util.function.BooleanSupplier condition) {
        try {
            Screen.waitFor(what, condition);
        } catch (AssertionError late) {
            throw new AssertionError(late.getMessage() + " in: " + said(dialog), late);
        }
    }

    private static void close(Shell dialog) {
        Screen.all(dialog, Button.class).stream().filter(button -> button.getText().equals("Close")).findFirst().orElseThrow()
                .notifyListeners(SWT.Selection, new Event());
    }

    @Test
    void anOrderIsReceivedUnitByUnitAndWhatLooksWrongIsAskedAbout() throws Exception {
        show();
        inDialog("Receive ...", dialog -> {
            fields(dialog).get(0).setText("O-114");
            fields(dialog).get(1).setText("Millbrook");
            fields(dialog).get(3).setText("stops when warm");
            receive(dialog, "\u0002C16-410001\u0003");
            untilIn(dialog, "the first unit", () -> done(dialog).getItemCount() == 1);
            assertEquals("", fields(dialog).get(3).getText(), "a complaint is of one unit");
            assertEquals("O-114", fields(dialog).get(0).getText(), "an order is of many");
            receive(dialog, "C16-410001");
            untilIn(dialog, "the duplicate", () -> said(dialog).contains("scanned twice"));
            receive(dialog, "C16-41");
            untilIn(dialog, "the question", () -> said(dialog).contains("does not look like a serial number of any family here"));
            receive(dialog, "C16-41");
            untilIn(dialog, "the second unit", () -> done(dialog).getItemCount() == 2);
            close(dialog);
        });
        Screen.waitFor("the rows", () -> rows().stream().anyMatch(row -> row.startsWith("C16-410001: ") && row.contains("waiting for its test"))
                && rows().stream().anyMatch(row -> row.startsWith("C16-41 (kept as typed)")));
    }

    /** Whoever scans the last unit and closes the dialog takes it for received. */
    @Test
    void aUnitThatIsRefusedBehindADialogThatIsClosedIsTold() throws Exception {
        show();
        StringBuilder words = new StringBuilder();
        CompletableFuture<CompletableFuture<String>> warned = new CompletableFuture<>();
        inDialog("Receive ...", dialog -> {
            receive(dialog, "C16-44");
            close(dialog);
            warned.complete(Dialogs.when("Receive units", false, warning -> {
                Screen.all(warning, Label.class).forEach(label -> words.append(label.getText()));
                Dialogs.ok(warning);
            }));
        });
        Screen.waitFor("the warning", () -> warned.join().isDone());
        assertEquals("Receive units", warned.join().get());
        assertEquals(true, words.toString().contains("NOT received: C16-44: C16-44 does not look like"), words.toString());
    }

    @Test
    void twelveUnitsAreScannedWithoutWaitingAndAColumnOfThemIsPasted() throws Exception {
        show();
        inDialog("Receive ...", dialog -> {
            fields(dialog).get(0).setText("O-115");
            for (int i = 0; i < 12; i++) {
                receive(dialog, "C16-4101" + String.format("%02d", i));
            }
            untilIn(dialog, "twelve units", () -> done(dialog).getItemCount() == 12);
            fields(dialog).get(2).setFocus();
            fields(dialog).get(2).insert("C16-410112\r\nC16-41\n\nC16-42\nC16-410113\n");
            untilIn(dialog, "all of the column", () -> done(dialog).getItemCount() == 15);
            java.util.List<String> told = java.util.List.of(done(dialog).getItems());
            assertEquals(true, told.stream().anyMatch(line -> line.startsWith("NOT received: C16-42: C16-42 does not look like")), told.toString());
            assertEquals(14, told.stream().filter(line -> line.startsWith("R-")).count(), told.toString());
            assertEquals("C16-41", fields(dialog).get(2).getText(), "the first that looks wrong is asked about");
            assertEquals(true, said(dialog).contains("C16-41 does not look like"), said(dialog));
            close(dialog);
        });
        Screen.waitFor("the rows", () -> rows().stream().filter(row -> row.startsWith("C16-4101")).count() == 14);
        Screen.waitFor("in order", () -> rows().stream().filter(row -> row.startsWith("C16-4101")).map(row -> row.substring(8, 10)).toList()
                .equals(java.util.stream.IntStream.range(0, 14).mapToObj(i -> String.format("%02d", i)).toList()));
    }

    // ---- corrections

    private static Shell signed(Shell dialog, String button) {
        Screen.all(dialog, Button.class).stream().filter(each -> each.getText().replace("&", "").equals(button)).findFirst().orElseThrow()
                .notifyListeners(SWT.Selection, new Event());
        Screen.waitFor("the dialog is done, or says why not: " + said(dialog), dialog::isDisposed);
        return dialog;
    }

    private static String story() {
        return Screen.all(StyledText.class).map(StyledText::getText).filter(text -> text.contains("received as R-")).findFirst().orElse("");
    }

    @Test
    void whatWasSaidOfAUnitIsSaidAnewAndAPhotoThatIsDroppedOnItIsAdded(@TempDir Path folder) throws Exception {
        show();
        inDialog("Receive ...", dialog -> {
            fields(dialog).get(0).setText("O-116");
            fields(dialog).get(3).setText("hums");
            receive(dialog, "C16-410020");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            close(dialog);
        });
        Screen.waitFor("its row", () -> rows().stream().anyMatch(row -> row.startsWith("C16-410020")));
        pick("C16-410020");
        Dialogs.answered("Correct a receipt", () -> Screen.press("Correct ..."), dialog -> {
            assertEquals(java.util.List.of("O-116", "", "C16-410020", "hums", "", ""), fields(dialog).subList(0, 6).stream().map(Text::getText).toList());
            fields(dialog).get(0).setText("O-117");
            fields(dialog).get(7).setText("QN");
            Button correct = Screen.all(dialog, Button.class).stream().filter(each -> each.getText().equals("Correct")).findFirst().orElseThrow();
            correct.notifyListeners(SWT.Selection, new Event());
            Screen.waitFor("a reason is asked", () -> correct.isEnabled() && !said(dialog).isEmpty());
            fields(dialog).get(6).setText("another order");
            signed(dialog, "Correct");
        });
        Screen.waitFor("the order", () -> Stream.of(received().getItems()).anyMatch(item -> item.getText(0).equals("C16-410020") && item.getText(3).equals("O-117")));
        pick("C16-410020");
        Path photo = Files.write(folder.resolve("dent.jpg"), SamplePhoto.of("a photo"));
        Dialogs.answered("Correct a receipt", () -> Drops.on(received(), photo), dialog -> {
            fields(dialog).get(7).setText("QN");
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
            close(dialog);
        });
        Screen.waitFor("its row", () -> rows().stream().anyMatch(row -> row.startsWith("C16-410021")));
        pick("C16-410021");
        Screen.waitFor("both photos", () -> story().contains("files: plate.jpg, back.jpg"));
    }

    private static Path write(Path folder, String name) {
        try {
            return Files.write(folder.resolve(name), SamplePhoto.of("another photo"));
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    // ---- a scanner

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

    @Test
    void aScanInAnyViewGoesToTheOpenTestOfThatUnit() throws Exception {
        OpenTest test = Technician.open(Technician.C16, "C16-410002", true);
        OpenTest other = Technician.open(Technician.C16, "C16-410003", true);
        assertEquals(other.id(), Technician.desk().selected());
        Screen.perspective(Ids.AUDIT);
        Table records = Screen.one(Table.class, table -> table.getColumnCount() == 5);
        scan(records, "C16-410002", 120);
        assertEquals(other.id(), Technician.desk().selected(), "that was typed by fingers");
        scan(records, "C16-410002", 5);
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
        assertEquals(selected, Technician.desk().selected());
        assertFalse(selected.equals(test.id()));
    }

    @Test
    void aScanOfAnUnknownUnitOffersToReceiveItAndAKnownOneIsShown() throws Exception {
        show();
        CompletableFuture<String> worked = Dialogs.when("Receive units", dialog -> {
            assertEquals("C16-410006", fields(dialog).get(2).getText());
            untilIn(dialog, "what is known", () -> Screen.all(dialog, StyledText.class).get(0).getText().contains("Nothing is on record of C16-410006"));
            receive(dialog, "C16-410006");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            close(dialog);
        });
        scan(received(), "C16-410006", 5);
        Screen.waitFor("the dialog", worked::isDone);
        worked.join();
        Screen.perspective(Ids.AUDIT);
        scan(Screen.one(Table.class, table -> table.getColumnCount() == 5), "C16-410006", 5);
        Screen.waitFor("the receipt", () -> Ids.BENCH.equals(Screen.page().getPerspective().getId())
                && Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("C16-410006") && text.getText().contains("received as R-")));
        Screen.waitFor("its row", () -> selected().startsWith("C16-410006"));
    }

    private static String selected() {
        TableItem[] items = received().getSelection();
        return items.length == 0 ? "" : items[0].getText(0);
    }

    // ---- pictures

    @Test
    void aNewPictureInTheCameraFolderIsOfferedToTheStepThatAsksForOne(@TempDir Path folder) throws Exception {
        CameraFolder camera = PlatformUI.getWorkbench().getService(CameraFolder.class);
        camera.watch(folder);
        try {
            OpenTest test = Technician.open(Technician.C16, "C16-410009", true);
            Technician.answerUntil(test, Answers.of("accepted"), "plate.photo");
            Files.writeString(folder.resolve("notes.txt"), "no picture");
            Files.write(folder.resolve("IMG_0042.JPG"), SamplePhoto.of("a photo"));
            Screen.waitFor("the picture", () -> Screen.entryFields().get(0).getText().endsWith("IMG_0042.JPG"));
            assertEquals(true, Screen.all(Label.class).anyMatch(label -> label.getText().equals("New picture IMG_0042.JPG: Enter attaches it.")));
            long before = test.shown().version();
            Screen.key(Screen.entryFields().get(0), SWT.CR, '\r');
            Screen.waitFor("it is attached", () -> test.shown().version() > before);
            assertEquals(true, test.shown().soFar().toString().contains("IMG_0042.JPG"));
        } finally {
            camera.close();
        }
    }

    /** A camera is unplugged and plugged in again, and its folder with it. */
    @Test
    void aCameraFolderThatComesBackIsWatchedAgain(@TempDir Path folder) throws Exception {
        Path pictures = Files.createDirectory(folder.resolve("pictures"));
        Queue<Path> told = new ConcurrentLinkedQueue<>();
        try (CameraFolder camera = new CameraFolder()) {
            camera.add(told::add);
            camera.watch(pictures);
            Files.delete(pictures);
            Files.createDirectory(pictures);
            AtomicInteger taken = new AtomicInteger();
            Screen.waitFor("a picture that was taken since", () -> {
                if (taken.getAndIncrement() % 20 == 0) {
                    take(pictures.resolve("IMG_" + taken + ".JPG"));
                }
                return !told.isEmpty();
            });
        }
    }

    /** The system keeps some hundred events; of what comes on top of them it says only that it was too much. */
    @Test
    void aPictureAmongMoreFilesThanTheSystemCountsIsToldAllTheSame(@TempDir Path folder) throws Exception {
        Path before = folder.resolve("IMG_0001.JPG");
        take(before);
        Queue<Path> told = new ConcurrentLinkedQueue<>();
        CountDownLatch written = new CountDownLatch(1);
        try (CameraFolder camera = new CameraFolder()) {
            camera.add(picture -> {
                told.add(picture);
                awaitLatch(written);
            });
            camera.watch(folder);
            take(folder.resolve("IMG_0002.JPG"));
            Screen.waitFor("the first", () -> told.size() == 1);
            take(folder.resolve("IMG_0003.JPG"));
            for (int i = 0; i < 2000; i++) {
                Files.createFile(folder.resolve("thumbnail" + i));
            }
            written.countDown();
            Screen.waitFor("the second", () -> told.contains(folder.resolve("IMG_0003.JPG")));
            assertEquals(false, told.contains(before), "what was there before is nothing new");
        }
    }

    private static void awaitLatch(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException over) {
            Thread.currentThread().interrupt();
        }
    }

    private static void take(Path picture) {
        try {
            Files.write(picture, SamplePhoto.of("a photo"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void aPictureDroppedOnTheStepThatAsksForOneIsOfferedAndOneThatAsksForNoneSaysSo(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), ReturnWindowTest.FINCH.replace("{ confirm", "{ attach photo \"Front\" confirm"));
        Path photo = Files.write(folder.resolve("front.jpg"), SamplePhoto.of("a photo"));
        OpenTest test = Technician.open(file.toString(), "F-410022", true);
        Shown asked = Technician.seen(test);
        assertEquals("look.photo", asked.key());
        Drops.on(Screen.card(), photo);
        assertEquals(photo.toString(), Screen.entryFields().get(0).getText());
        Technician.key(test, SWT.CR, '\r');
        Screen.waitFor("it is attached", () -> test.shown().version() > asked.version());
        Technician.seen(test);
        assertEquals(true, test.shown().soFar().toString().contains("front.jpg"));
        Drops.on(Screen.card(), photo);
        assertEquals("", Screen.entryFields().get(0).getText());
        assertEquals(true, Screen.all(Label.class).anyMatch(label -> label.getText().equals("This step asks for no file; front.jpg is not taken.")));
    }

    // ---- repair

    private static void carryOut(OpenTest test, String answer) {
        while (test.shown().ending().isEmpty()) {
            Shown asked = Technician.seen(test);
            Screen.enter(asked.key().startsWith("off") ? "done" : answer);
            Screen.waitFor("after " + asked.key(), () -> test.shown().version() > asked.version());
            Screen.settle();
        }
    }

    @Test
    void aRepairIsWrittenDownAndTheRetestTellsIt(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), ReturnWindowTest.FINCH);
        Path photo = Files.write(folder.resolve("board.jpg"), SamplePhoto.of("a photo"));
        show();
        inDialog("Receive ...", dialog -> {
            fields(dialog).get(0).setText("O-7");
            receive(dialog, "F-410007");
            untilIn(dialog, "the question", () -> said(dialog).contains("does not look like"));
            receive(dialog, "F-410007");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            close(dialog);
        });
        carryOut(Technician.open(file.toString(), "F-410007", false), "n");
        show();
        Screen.waitFor("rejected", () -> rows().stream().anyMatch(row -> row.startsWith("F-410007") && row.contains("rejected")));
        pick("F-410007");
        CompletableFuture<String> worked = Dialogs.when("Repaired", dialog -> {
            fields(dialog).get(0).setText("power stage");
            fields(dialog).get(1).setText("C12, L-7\nQ3");
            Drops.on(Drops.target(dialog), photo);
            fields(dialog).get(2).setText("QN");
            signed(dialog, "Sign");
        });
        Screen.press("Repaired ...");
        Screen.waitFor("the repair", worked::isDone);
        worked.join();
        Screen.waitFor("repaired", () -> rows().stream().anyMatch(row -> row.startsWith("F-410007") && row.contains("repaired, waiting for its retest")));
        pick("F-410007");
        Screen.waitFor("the repair in the story", () -> story().contains("power stage; C12 (lot L-7); Q3; files: board.jpg"));
        OpenTest retest = Technician.open(file.toString(), "F-410007", false);
        Screen.waitFor("the repair among the units on the bench", () -> Technician.desk().units().stream()
                .anyMatch(unit -> unit.test().equals(retest.id()) && unit.stage().equals("Work (repaired: power stage; C12 (lot L-7); Q3)")));
        carryOut(retest, "y");
        show();
        Screen.waitFor("accepted", () -> rows().stream().anyMatch(row -> row.startsWith("F-410007") && row.contains("accepted")));
        pick("F-410007");
        Screen.waitFor("the story", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("power stage; C12 (lot L-7); Q3")
                && text.getText().contains("order O-7")));
    }

    @Test
    void aUnitWhoseAcceptanceWasMadeVoidIsNotCalledAcceptedAnyMore(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), ReturnWindowTest.FINCH);
        show();
        inDialog("Receive ...", dialog -> {
            receive(dialog, "F-410023");
            untilIn(dialog, "the question", () -> said(dialog).contains("does not look like"));
            receive(dialog, "F-410023");
            untilIn(dialog, "the unit", () -> done(dialog).getItemCount() == 1);
            close(dialog);
        });
        OpenTest test = Technician.open(file.toString(), "F-410023", false);
        carryOut(test, "y");
        show();
        Screen.waitFor("accepted", () -> rows().stream().anyMatch(row -> row.startsWith("F-410023") && row.endsWith("accepted")));
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            ledger.afterSeal(BenchTime.real()).sign(test.id(), new RecordFact.Voided("mixed up with another unit"), Approved.by("KM"));
        }
        Screen.perspective(Ids.AUDIT);
        Screen.perspective(Ids.BENCH);
        Screen.page().activate(Screen.page().findView(Ids.CARD_VIEW));
        Screen.page().activate(Screen.page().showView(Ids.RECEIVED_VIEW));
        Screen.waitFor("not any more", () -> rows().stream().anyMatch(row -> row.startsWith("F-410023") && row.endsWith("its last test counts no more, waiting for a new one")));
        pick("F-410023");
        Screen.waitFor("the story", () -> story().contains("accepted (void: it counts no more)"));
        assertEquals(true, Screen.one(Button.class, button -> button.getText().equals("Test ...")).isEnabled());
    }

    private static void pick(String unit) {
        Table table = received();
        for (int i = 0; i < table.getItemCount(); i++) {
            if (table.getItem(i).getText(0).startsWith(unit)) {
                Screen.select(table, i);
            }
        }
        Screen.settle();
    }
}
