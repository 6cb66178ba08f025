package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

import org.benchwright.core.Digest;
import org.benchwright.present.DeviationRow;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.house.House;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.SamplePhoto;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What waits for an auditor is listed and decided in the window, and records are amended, handed over and ended there. */
@ExtendWith(QuietLog.class)
class AfterSealWindowTest {

    @Test
    void aNonconformityIsDecidedInItsListAndARefusalIsSaidInTheDialog(@TempDir Path folder) throws Exception {
        Auditor.test(folder, "F-310001", false);
        Table list = Auditor.list(Ids.NONCONFORMITIES_VIEW);
        Screen.waitFor("the row", () -> Auditor.rows(list, "F-310001").size() == 1);
        assertEquals("an auditor", Auditor.rows(list, "F-310001").get(0).getText(2));
        assertFalse(Auditor.enabled("Decide"), "nothing is selected");
        Auditor.select(Ids.NONCONFORMITIES_VIEW, Auditor.rows(list, "F-310001").get(0));
        assertTrue(Auditor.enabled("Decide"));
        Screen.waitFor("the sheet", () -> Auditor.sheet("F-310001").contains("The record is waiting for a decision."));
        refusedThenCancelled();
        Auditor.sign("Decide", "Decide on a nonconformity", shell -> {
            Auditor.choose(shell, "scrap");
            Dialogs.fields(shell).get(0).setText("not worth a repair");
        }, "MJ");
        Screen.waitFor("the list without it", () -> Auditor.rows(list, "F-310001").isEmpty());
        Screen.tick("Also those", true);
        Screen.waitFor("it among all", () -> Auditor.rows(list, "F-310001").size() == 1);
        assertEquals("scrap, MJ", Auditor.rows(list, "F-310001").get(0).getText(4));
        Screen.tick("Also those", false);
    }

    /** QN carried the test out. */
    private static void refusedThenCancelled() throws Exception {
        Dialogs.answered("Decide on a nonconformity", () -> Screen.press("Decide"), shell -> {
            Auditor.choose(shell, "scrap");
            Dialogs.fields(shell).get(0).setText("not worth a repair");
            Auditor.password(shell, "QN", "whatever");
            Dialogs.press(shell, "Sign");
            refused(shell, "QN had a hand in this test");
            Dialogs.press(shell, "Cancel");
        });
    }

    private static void refused(Shell shell, String words) {
        TitleAreaDialog dialog = (TitleAreaDialog) shell.getData();
        Screen.waitFor("the refusal", () -> dialog.getErrorMessage() != null && dialog.getErrorMessage().startsWith(words));
    }

    /** It was of another age when it was read before. */
    private static void staysSelectedThoughItGrowsOlder(Table list, String serial) {
        TableViewer rows = (TableViewer) Screen.page().findView(Ids.DEPARTURES_VIEW).getSite().getSelectionProvider();
        DeviationRow row = (DeviationRow) Auditor.rows(list, serial).get(0).getData();
        DeviationRow younger = new DeviationRow(row.test(), row.serial(), row.family(), row.procedure(), row.event(), row.nonconformity(), row.place(), row.noted(),
                "just now", row.words(), row.owner(), row.waiting(), row.decision());
        rows.setInput(List.of(younger));
        Auditor.select(Ids.DEPARTURES_VIEW, Auditor.rows(list, serial).get(0));
        Screen.press("Read again");
        Screen.waitFor("its age", () -> !Auditor.rows(list, serial).get(0).getText(1).equals("just now"));
        assertEquals(List.of(serial), Stream.of(list.getSelection()).map(item -> item.getText(0)).toList(), "it stays selected");
    }

    @Test
    void aDepartureHoldsTheHandOverUpUntilItIsDecided(@TempDir Path folder) throws Exception {
        OpenTest test = Auditor.givenUp(folder, "F-310002");
        Auditor.showSheet(test, "F-310002");
        Screen.waitFor("the standing", () -> Auditor.sheet("F-310002").contains("There is no certificate as things stand. 1 to decide first."));
        assertFalse(Auditor.enabled("Hand over"));
        assertFalse(Auditor.enabled("Recall"));
        assertTrue(Auditor.enabled("Void"));
        String tip = Screen.one(Button.class, button -> button.getText().startsWith("Hand over")).getToolTipText();
        assertTrue(tip.startsWith("1 to decide first"), tip);
        Table list = Auditor.list(Ids.DEPARTURES_VIEW);
        Screen.waitFor("the row", () -> Auditor.rows(list, "F-310002").size() == 1);
        Auditor.select(Ids.DEPARTURES_VIEW, Auditor.rows(list, "F-310002").get(0));
        staysSelectedThoughItGrowsOlder(list, "F-310002");
        Auditor.sign("Decide", "Decide on a departure", shell -> Dialogs.fields(shell).get(0).setText("nothing was begun"), "MJ");
        Screen.waitFor("the decision on the sheet that is shown", () -> Auditor.sheet("F-310002").contains("accepted by MJ: nothing was begun"));
        assertTrue(Auditor.enabled("Hand over"));
        Auditor.sign("Review", "Review a record", shell -> Auditor.choose(shell, "as it should be"), "HD");
        Screen.waitFor("the review", () -> Auditor.sheet("F-310002").contains("The record is reviewed."));
        Auditor.sign("Hand over", "Hand a unit over", shell -> Dialogs.fields(shell).get(0).setText("its owner"), "KM");
        Screen.waitFor("the hand-over", () -> Auditor.sheet("F-310002").contains("handed over to its owner with certificate " + test.id() + "/1"));
        assertTrue(Auditor.enabled("Recall"));
        Auditor.sign("Recall", "Recall a unit", shell -> Dialogs.fields(shell).get(0).setText("mixed up"), "KM");
        Screen.waitFor("the recall", () -> Auditor.sheet("F-310002").contains("recalled by KM"));
        assertFalse(Auditor.enabled("Amend"));
    }

    @Test
    void whatIsAmendedStaysReadableStruckAndTheVerdictThatItDoubtsIsNotHandedOver(@TempDir Path folder) throws Exception {
        OpenTest test = Auditor.test(folder, "F-310003", true);
        Auditor.showSheet(test, "F-310003");
        Screen.waitFor("the standing", () -> Auditor.enabled("Hand over"));
        Auditor.amend("F-310003");
        assertFalse(Auditor.enabled("Hand over"));
        StyledText sheet = Screen.one(StyledText.class, text -> text.getText().startsWith("Unit F-310003"));
        assertTrue(List.of(sheet.getStyleRanges()).stream().anyMatch(range -> ((StyleRange) range).strikeout), "the first entry is struck");
        assertTrue(sheet.getText().contains("by QN") && sheet.getText().contains("a foot is broken"), sheet.getText());
    }

    @Test
    void whatWasDrawnForAReviewSaysSoInListSheetAndCheckAndWaitsForIt(@TempDir Path folder) throws Exception {
        Auditor.test(folder, "F-310006", true);
        Auditor.reviewAll();
        try {
            OpenTest test = Auditor.test(folder, "F-310007", true);
            Auditor.showSheet(test, "F-310007");
            Screen.waitFor("the standing", () -> Auditor.sheet("F-310007").contains("The record is due for review."));
            assertTrue(Auditor.sheet("F-310007").contains("This record was drawn for a review"), Auditor.sheet("F-310007"));
            assertEquals("accepted, due for review", Auditor.records().getItem(0).getText(2));
            assertFalse(Auditor.enabled("Hand over"));
            Screen.press("Check the ledger");
            Screen.waitFor("the verdict", () -> Screen.story("SOUND").contains("1 review is due: " + test.id()));
            Auditor.showSheet(test, "F-310007");
            Auditor.sign("Review", "Review a record", shell -> Auditor.choose(shell, "as it should be"), "MJ");
            Screen.waitFor("the review", () -> Auditor.sheet("F-310007").contains("The record is reviewed."));
            assertTrue(Auditor.enabled("Hand over"));
        } finally {
            Auditor.endReviews();
        }
    }

    @Test
    void aPhotoThatShowsAPersonIsWithdrawn(@TempDir Path folder) throws Exception {
        Path photo = Files.write(folder.resolve("face.jpg"), SamplePhoto.of("a face in the window"));
        OpenTest test = Auditor.photographed(folder, "F-310008", photo);
        Auditor.showSheet(test, "F-310008");
        Screen.waitFor("the button", () -> Auditor.enabled("Withdraw attachment"));
        Auditor.sign("Withdraw attachment", "Withdraw an attachment", shell -> {
            Auditor.choose(shell, "face.jpg");
            Dialogs.fields(shell).get(0).setText("a face can be seen");
        }, "MJ");
        Screen.waitFor("the withdrawal", () -> Auditor.sheet("F-310008").contains("was withdrawn by MJ"));
        assertTrue(Auditor.sheet("F-310008").contains("a face can be seen"), Auditor.sheet("F-310008"));
        assertFalse(Auditor.enabled("Withdraw attachment"), "it is gone");
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> Screen.story("SOUND").contains("was withdrawn by auditor MJ: a face can be seen"));
    }

    /** The program was killed between the signature and the end of what follows from it: the file beside the ledger is there still. */
    @Test
    void aWithdrawalThatWasBrokenOffIsEndedWhereTheCheckTellsOfIt(@TempDir Path folder) throws Exception {
        byte[] photo = SamplePhoto.of("a face at the door");
        OpenTest test = Auditor.photographed(folder, "F-310009", Files.write(folder.resolve("door.jpg"), photo));
        Auditor.showSheet(test, "F-310009");
        Screen.waitFor("the button", () -> Auditor.enabled("Withdraw attachment"));
        Auditor.sign("Withdraw attachment", "Withdraw an attachment", shell -> Dialogs.fields(shell).get(0).setText("a face can be seen"), "MJ");
        Screen.waitFor("the withdrawal", () -> Auditor.sheet("F-310009").contains("was withdrawn by MJ"));
        String digest = Digest.of(photo).hex();
        Path beside = Technician.desk().ledger().resolveSibling("attachments").resolve(digest.substring(0, 2)).resolve(digest.substring(2));
        Files.createDirectories(beside.getParent());
        Files.write(beside, photo);
        Screen.press("Check the ledger");
        Screen.waitFor("that it is there still", () -> Screen.story("SOUND").contains("its bytes are still here"));
        Screen.press("&Erase what was withdrawn");
        Screen.waitFor("that it is gone, looked at once more", () -> Screen.story("SOUND").contains("was withdrawn by auditor MJ: a face can be seen")
                && !Screen.story("SOUND").contains("its bytes are still here"));
        assertFalse(Files.exists(beside));
        assertTrue(Screen.all(Button.class).noneMatch(button -> button.getText().startsWith("&Erase")), "there is nothing left to erase");
    }

    @Test
    void aPhotoOfAReceiptIsWithdrawnWhereUnitsInTheHouseAreShown(@TempDir Path folder) throws Exception {
        Auditor.test(folder, "F-310011", true);
        Path photo = Files.write(folder.resolve("counter.jpg"), SamplePhoto.of("a face at the counter"));
        Receiving.Arriving unit = new Receiving.Arriving("", "", "F-310012", "read", true, true, "", "", "", "", List.of(photo));
        CompletableFuture<ReceivedRow> received = PlatformUI.getWorkbench().getService(House.class).enter(receiving -> receiving.receive(unit, "QN"));
        Screen.waitFor("the receipt", received::isDone);
        received.join();
        Screen.perspective(Ids.BENCH);
        Screen.page().showView(Ids.RECEIVED_VIEW);
        Table list = Screen.one(Table.class, table -> table.getColumnCount() == 7);
        Screen.waitFor("its row", () -> Auditor.rows(list, "F-310012").size() == 1 || Auditor.rows(list, "F-310012 (kept as typed)").size() == 1);
        Stream.of(list.getItems()).filter(item -> item.getText(0).startsWith("F-310012")).findFirst().ifPresent(item -> Screen.select(list, list.indexOf(item)));
        Screen.waitFor("the button", () -> Auditor.enabled("Withdraw file"));
        Auditor.sign("Withdraw file ...", "Withdraw a file", shell -> {
            Auditor.choose(shell, "counter.jpg");
            Dialogs.fields(shell).get(0).setText("a face can be seen");
        }, "MJ");
        Screen.waitFor("the withdrawal", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("counter.jpg (withdrawn by MJ")));
        assertFalse(Auditor.enabled("Withdraw file"), "it is gone");
    }

    @Test
    void reviewsArePlannedAndEndedInTheWindowAndWhatWasDrawnIsTold(@TempDir Path folder) throws Exception {
        Auditor.test(folder, "F-310013", true);
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Dialogs.answered("Plan reviews", () -> Screen.press("Plan reviews ..."), shell -> {
            assertTrue(((TitleAreaDialog) shell.getData()).getMessage().startsWith("No reviews are planned"), "how it is planned now");
            Dialogs.fields(shell).get(0).setText("many");
            Dialogs.fields(shell).get(2).setText("the first month");
            Auditor.password(shell, "MJ", Approved.PASSWORD);
            Dialogs.press(shell, "Sign");
            refused(shell, "A lot of many at \"1.0\" %");
            Dialogs.fields(shell).get(0).setText("100");
            Auditor.password(shell, "KM", Approved.PASSWORD);
            Dialogs.press(shell, "Sign");
            refused(shell, "KM may not plan reviews");
            Dialogs.press(shell, "Cancel");
        });
        Auditor.sign("Plan reviews ...", "Plan reviews", shell -> {
            Dialogs.fields(shell).get(0).setText("2");
            Dialogs.fields(shell).get(2).setText("the first month");
        }, "MJ");
        try {
            Screen.waitFor("the plan", () -> told("Every test that is opened from now on is reviewed."));
            OpenTest test = Auditor.test(folder, "F-310014", true);
            Auditor.showSheet(test, "F-310014");
            Screen.waitFor("the standing", () -> Auditor.sheet("F-310014").contains("The record is due for review."));
            Auditor.sign("Plan reviews ...", "Plan reviews", shell -> {
                String words = ((TitleAreaDialog) shell.getData()).getMessage();
                assertTrue(words.contains("Every test") && words.contains(test.id()), words);
                Auditor.choose(shell, "none");
                Dialogs.fields(shell).get(2).setText("the first month is over");
            }, "MJ");
            Screen.waitFor("the end", () -> told("No reviews are planned"));
            Auditor.showSheet(test, "F-310014");
            Auditor.sign("Review ...", "Review a record", shell -> Auditor.choose(shell, "as it should be"), "HD");
            Screen.waitFor("the review", () -> Auditor.sheet("F-310014").contains("The record is reviewed."));
        } finally {
            Auditor.endReviewsIfPlanned();
        }
    }

    private static boolean told(String words) {
        return Screen.all(Label.class).anyMatch(label -> label.getText().startsWith(words));
    }

    @Test
    void twoTestsOfAUnitAreComparedAndWhatWasDecidedOtherwiseStandsFirst(@TempDir Path folder) throws Exception {
        OpenTest first = Auditor.test(folder, "F-310004", true);
        OpenTest second = Auditor.test(folder, "F-310004", false);
        Auditor.showSheet(first, "F-310004");
        assertFalse(Auditor.enabled("Compare"), "there is none before it");
        Auditor.showSheet(second, "F-310004");
        Screen.waitFor("the button", () -> Auditor.enabled("Compare"));
        Dialogs.answered("Compare with an earlier test", () -> Screen.press("Compare"), shell -> {
            Table lines = Screen.all(shell, Table.class).get(0);
            assertTrue(lines.getItem(0).getText(2).startsWith("yes (conforms)"), lines.getItem(0).getText(2));
            assertTrue(lines.getItem(0).getText(3).startsWith("no (does not conform)"), lines.getItem(0).getText(3));
            Dialogs.press(shell, "Close");
        });
    }

    @Test
    void theImpactOfAnInstrumentIsAskedAndARefusalIsSaid(@TempDir Path folder) throws Exception {
        Auditor.showSheet(Auditor.measured(folder, "F-310005", "24,45"), "F-310005");
        Dialogs.answeredEmpty("Impact of an instrument that read wrong", () -> Screen.press("Impact"), shell -> {
            TitleAreaDialog dialog = (TitleAreaDialog) shell.getData();
            Dialogs.fields(shell).get(0).setText("M-23");
            Dialogs.fields(shell).get(1).setText("somehow");
            Dialogs.press(shell, "Find tests");
            Screen.waitFor("the refusal", () -> dialog.getErrorMessage() != null && dialog.getErrorMessage().startsWith("\"somehow\" doesn't say"));
            Dialogs.fields(shell).get(1).setText("0.3 % low");
            Dialogs.press(shell, "Find tests");
            Screen.waitFor("the answer", () -> dialog.getMessage() != null && dialog.getMessage().contains("a reading by it"));
            Table list = Screen.all(shell, Table.class).get(0);
            List<TableItem> rows = Auditor.rows(list, "F-310005");
            assertEquals(1, rows.size(), dialog.getMessage());
            assertEquals("accepted", rows.get(0).getText(1));
            assertEquals("\u2260 rejected", rows.get(0).getText(2), "24.45 V that should have been 24.52 V");
            Dialogs.press(shell, "Close");
        });
    }
}
