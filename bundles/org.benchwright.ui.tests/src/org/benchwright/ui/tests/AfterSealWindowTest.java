package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.house.House;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.SamplePhoto;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
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
            Auditor.fields(shell).get(0).setText("not worth a repair");
        }, "MJ");
        Screen.waitFor("the list without it", () -> Auditor.rows(list, "F-310001").isEmpty());
        Button all = Screen.one(Button.class, button -> button.getText().startsWith("Also those"));
        all.setSelection(true);
        all.notifyListeners(SWT.Selection, new Event());
        Screen.waitFor("it among all", () -> Auditor.rows(list, "F-310001").size() == 1);
        assertEquals("scrap, MJ", Auditor.rows(list, "F-310001").get(0).getText(4));
        all.setSelection(false);
        all.notifyListeners(SWT.Selection, new Event());
    }

    /** QN carried the test out. */
    private static void refusedThenCancelled() throws Exception {
        CompletableFuture<String> answered = Dialogs.when("Decide on a nonconformity", shell -> {
            Auditor.choose(shell, "scrap");
            Auditor.fields(shell).get(0).setText("not worth a repair");
            Auditor.password(shell, "QN", "whatever");
            Auditor.press(shell, "Sign");
            refused(shell, "QN had a hand in this test");
            Auditor.press(shell, "Cancel");
        });
        Screen.press("Decide");
        Screen.waitFor("the answer", answered::isDone);
        answered.get();
    }

    private static void refused(Shell shell, String words) {
        TitleAreaDialog dialog = (TitleAreaDialog) shell.getData();
        Screen.waitFor("the refusal", () -> dialog.getErrorMessage() != null && dialog.getErrorMessage().startsWith(words));
    }

    /** An age in seconds is another one at the next reading; one in minutes mostly is not, and then there is nothing to see. */
    private static void staysSelectedThoughItGrowsOlder(Table list, String serial) {
        String age = Auditor.rows(list, serial).get(0).getText(1);
        long begun = System.currentTimeMillis();
        Screen.waitFor("more than a second", () -> System.currentTimeMillis() > begun + 1_100);
        Screen.press("Read again");
        Screen.waitFor("another age", () -> !Auditor.rows(list, serial).get(0).getText(1).equals(age) || System.currentTimeMillis() > begun + 5_000);
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
        Auditor.sign("Decide", "Decide on a departure", shell -> Auditor.fields(shell).get(0).setText("nothing was begun"), "MJ");
        Auditor.showSheet(test, "F-310002");
        Screen.waitFor("the decision", () -> Auditor.sheet("F-310002").contains("accepted by MJ: nothing was begun"));
        assertTrue(Auditor.enabled("Hand over"));
        Auditor.sign("Review", "Review a record", shell -> Auditor.choose(shell, "as it should be"), "HD");
        Screen.waitFor("the review", () -> Auditor.sheet("F-310002").contains("The record is reviewed."));
        Auditor.sign("Hand over", "Hand a unit over", shell -> Auditor.fields(shell).get(0).setText("its owner"), "KM");
        Screen.waitFor("the hand-over", () -> Auditor.sheet("F-310002").contains("handed over to its owner with certificate " + test.id() + "/1"));
        assertTrue(Auditor.enabled("Recall"));
        Auditor.sign("Recall", "Recall a unit", shell -> Auditor.fields(shell).get(0).setText("mixed up"), "KM");
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
            assertEquals("accepted, due for review", Screen.one(Table.class, table -> table.getColumnCount() == 5).getItem(0).getText(2));
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
            Auditor.fields(shell).get(0).setText("a face can be seen");
        }, "MJ");
        Screen.waitFor("the withdrawal", () -> Auditor.sheet("F-310008").contains("was withdrawn by MJ"));
        assertTrue(Auditor.sheet("F-310008").contains("a face can be seen"), Auditor.sheet("F-310008"));
        assertFalse(Auditor.enabled("Withdraw attachment"), "it is gone");
        Screen.press("Check the ledger");
        Screen.waitFor("the verdict", () -> Screen.story("SOUND").contains("was withdrawn by auditor MJ: a face can be seen"));
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
            Auditor.fields(shell).get(0).setText("a face can be seen");
        }, "MJ");
        Screen.waitFor("the withdrawal", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("counter.jpg (withdrawn by MJ")));
        assertFalse(Auditor.enabled("Withdraw file"), "it is gone");
    }

    @Test
    void reviewsArePlannedAndEndedInTheWindowAndWhatWasDrawnIsTold(@TempDir Path folder) throws Exception {
        Auditor.test(folder, "F-310013", true);
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        CompletableFuture<String> refused = Dialogs.when("Plan reviews", shell -> {
            assertTrue(((TitleAreaDialog) shell.getData()).getMessage().startsWith("No reviews are planned"), "how it is planned now");
            Auditor.fields(shell).get(0).setText("many");
            Auditor.fields(shell).get(2).setText("the first month");
            Auditor.password(shell, "MJ", Approved.PASSWORD);
            Auditor.press(shell, "Sign");
            refused(shell, "A lot of many at \"1.0\" %");
            Auditor.fields(shell).get(0).setText("100");
            Auditor.password(shell, "KM", Approved.PASSWORD);
            Auditor.press(shell, "Sign");
            refused(shell, "KM may not plan reviews");
            Auditor.press(shell, "Cancel");
        });
        Screen.press("Plan reviews ...");
        Screen.waitFor("the answer", refused::isDone);
        refused.get();
        Auditor.sign("Plan reviews ...", "Plan reviews", shell -> {
            Auditor.fields(shell).get(0).setText("2");
            Auditor.fields(shell).get(2).setText("the first month");
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
                Auditor.fields(shell).get(2).setText("the first month is over");
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
        CompletableFuture<String> looked = Dialogs.when("Compare with an earlier test", shell -> {
            Table lines = Screen.all(shell, Table.class).get(0);
            assertTrue(lines.getItem(0).getText(2).startsWith("yes (conforms)"), lines.getItem(0).getText(2));
            assertTrue(lines.getItem(0).getText(3).startsWith("no (does not conform)"), lines.getItem(0).getText(3));
            Auditor.press(shell, "Close");
        });
        Screen.press("Compare");
        Screen.waitFor("the comparison", looked::isDone);
        looked.get();
    }

    @Test
    void theImpactOfAnInstrumentIsAskedAndARefusalIsSaid(@TempDir Path folder) throws Exception {
        Auditor.showSheet(Auditor.measured(folder, "F-310005", "24,45"), "F-310005");
        CompletableFuture<String> asked = Dialogs.when("Impact of an instrument that read wrong", false, shell -> {
            TitleAreaDialog dialog = (TitleAreaDialog) shell.getData();
            Auditor.fields(shell).get(0).setText("M-23");
            Auditor.fields(shell).get(1).setText("somehow");
            Auditor.press(shell, "Look");
            Screen.waitFor("the refusal", () -> dialog.getErrorMessage() != null && dialog.getErrorMessage().startsWith("\"somehow\" doesn't say"));
            Auditor.fields(shell).get(1).setText("0.3 % low");
            Auditor.press(shell, "Look");
            Screen.waitFor("the answer", () -> dialog.getMessage() != null && dialog.getMessage().contains("a reading by it"));
            Table list = Screen.all(shell, Table.class).get(0);
            List<TableItem> rows = Auditor.rows(list, "F-310005");
            assertEquals(1, rows.size(), dialog.getMessage());
            assertEquals("accepted", rows.get(0).getText(1));
            assertEquals("\u2260 rejected", rows.get(0).getText(2), "24.45 V that should have been 24.52 V");
            Auditor.press(shell, "Close");
        });
        Screen.press("Impact");
        Screen.waitFor("the answer", asked::isDone);
        asked.get();
    }
}
