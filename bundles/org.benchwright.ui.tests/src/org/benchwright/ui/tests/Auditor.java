package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

import org.benchwright.present.DeviationRow;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewPart;

/** An auditor at the Audit perspective, and tests of a small procedure for the auditor to look at. */
final class Auditor {

    /** A unit that is looked at once. */
    static final String PROCEDURE = """
            family finch "Finch" { lamp pwr green "Power" }
            procedure finch_audit "Finch at a glance" revision 1 {
                applies to finch
                stage work "Work" { step look "Look." { confirm "It is whole." or conclude rejected "It is broken." } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private static final String MEASURED = """
            family heron "Heron" { lamp pwr green "Power" }
            procedure heron_audit "Heron supply" revision 1 {
                applies to heron
                instrument meter "Multimeter" reads V dc up to 60 V, uncertainty at most 0.05 V, coverage 2
                stage work "Work" { step supply "Measure." {
                    measure volts with meter, limits 23.5 .. 24.5 V, decide guarded or conclude rejected "Too far off."
                } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private static final String PHOTOGRAPHED = """
            family wren "Wren" { lamp pwr green "Power" }
            procedure wren_audit "Wren on a photo" revision 1 {
                applies to wren
                stage work "Work" { step look "Look." { attach photo "Type plate" } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private Auditor() {
    }

    /** Makes sure that there are auditors who had no hand in any test: MJ and HD. */
    private static void employ() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            if (ledger.people().stream().noneMatch(person -> person.id().equals("MJ"))) {
                Approved.auditors(ledger, BenchTime.real());
            }
        }
    }

    /** A sealed test of a unit that is whole or broken. */
    static OpenTest test(Path folder, String serial, boolean whole) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), PROCEDURE);
        OpenTest test = Technician.open(file.toString(), serial, false);
        employ();
        return finish(test, whole ? "y" : "n");
    }

    /** A sealed test that the technician gave up. */
    static OpenTest givenUp(Path folder, String serial) throws Exception {
        Path file = Files.writeString(folder.resolve("finch.procedure"), PROCEDURE);
        OpenTest test = Technician.open(file.toString(), serial, false);
        employ();
        Technician.entered(test, "! The plate is missing.");
        return finish(test, "y");
    }

    /** A sealed test of a unit that was measured with meter M-23. */
    static OpenTest measured(Path folder, String serial, String volts) throws Exception {
        Path file = Files.writeString(folder.resolve("heron.procedure"), MEASURED);
        OpenTest test = Technician.open(file.toString(), serial, false);
        employ();
        while (test.shown().ending().isEmpty()) {
            String asked = Technician.seen(test).key();
            Technician.entered(test, asked.startsWith("off") ? "done" : asked.startsWith("instrument") ? "M-23, 0.02 V, k 2, due 2027-03-01" : volts);
        }
        return test;
    }

    /** A sealed test with a photo. */
    static OpenTest photographed(Path folder, String serial, Path photo) throws Exception {
        Path file = Files.writeString(folder.resolve("wren.procedure"), PHOTOGRAPHED);
        OpenTest test = Technician.open(file.toString(), serial, false);
        employ();
        return finish(test, photo.toString());
    }

    /** From here on every test that is opened is drawn for a review, until {@link #endReviews}. */
    static void reviewAll() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            ledger.approvals(BenchTime.real()).planReviews(2, new BigDecimal("1.0"), "the first month", Approved.by("MJ"));
        }
    }

    static void endReviews() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(Technician.desk().ledger())) {
            ledger.approvals(BenchTime.real()).endReviews("it is over", Approved.by("MJ"));
        }
    }

    /** Whatever failed, the tests that follow are not drawn. */
    static void endReviewsIfPlanned() throws Exception {
        boolean planned;
        try (BenchLedger ledger = BenchLedger.openReadOnly(Technician.desk().ledger())) {
            planned = ledger.revisions().reviews().isPresent();
        }
        if (planned) {
            endReviews();
        }
    }

    /** Answers to the end: what is to be done is done, and all else is answered so. */
    static OpenTest finish(OpenTest test, String answer) {
        while (test.shown().ending().isEmpty()) {
            String asked = Technician.seen(test).key();
            Technician.entered(test, asked.startsWith("off") || asked.startsWith("switch") ? "done" : answer);
        }
        return test;
    }

    // ---- lists

    static Table records() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 5 && table.getColumn(2).getText().equals("Verdict"));
    }

    /** Shows Departures or Nonconformities with what is in the ledger now. */
    static Table list(String view) throws Exception {
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(view);
        Screen.settle();
        Screen.press("Read again");
        return Screen.one(Table.class, table -> table.getColumnCount() == 7);
    }

    /** The row of a unit, or none. */
    static List<TableItem> rows(Table table, String serial) {
        return List.of(table.getItems()).stream().filter(item -> item.getText(0).equals(serial)).toList();
    }

    static void select(String view, TableItem row) {
        IViewPart part = Screen.page().findView(view);
        Screen.page().activate(part);
        part.getSite().getSelectionProvider().setSelection(new StructuredSelection((DeviationRow) row.getData()));
        Screen.settle();
    }

    // ---- signing

    /** Presses a button, fills the dialog of that title and signs. */
    static void sign(String button, String title, Consumer<Shell> filling, String by) throws Exception {
        Dialogs.answered(title, () -> Screen.press(button), shell -> {
            filling.accept(shell);
            password(shell, by, Approved.PASSWORD);
            Dialogs.press(shell, "Sign");
        });
    }

    /** Says on the sheet of a unit that a foot is broken, which was not so by its test; waits until it tells what follows. */
    static void amend(String serial) throws Exception {
        sign("Amend", "Amend an entry", shell -> {
            Dialogs.fields(shell).get(0).setText("no");
            Dialogs.fields(shell).get(1).setText("a foot is broken");
        }, "QN");
        Screen.waitFor("the amendment", () -> sheet(serial).contains("it would have been rejected"));
    }

    static void choose(Shell dialog, String option) {
        Combo combo = Screen.all(dialog, Combo.class).get(0);
        int index = List.of(combo.getItems()).stream().filter(item -> item.contains(option)).map(combo::indexOf).findFirst().orElse(-1);
        assertTrue(index >= 0, option + " in " + List.of(combo.getItems()));
        combo.select(index);
    }

    static void password(Shell dialog, String by, String password) {
        List<Text> fields = Dialogs.fields(dialog);
        fields.get(fields.size() - 2).setText(by);
        Text secret = fields.get(fields.size() - 1);
        assertTrue((secret.getStyle() & SWT.PASSWORD) != 0, "nobody reads along");
        secret.setText(password);
    }

    // ---- the record sheet

    static String sheet(String serial) {
        return Screen.story("Unit " + serial);
    }

    static boolean enabled(String button) {
        return Screen.one(Button.class, each -> each.getText().startsWith(button)).isEnabled();
    }

    /** Shows the sheet of a test from the records. */
    static void showSheet(OpenTest test, String serial) throws Exception {
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.RECORDS_VIEW);
        Screen.press("Read again");
        Screen.one(Text.class, text -> (text.getStyle() & SWT.SEARCH) != 0).setText(test.id());
        Screen.waitFor("the record", () -> records().getItemCount() == 1);
        Screen.selectRecord(records().getItem(0).getData());
        Screen.waitFor("the sheet", () -> !sheet(serial).isEmpty());
    }
}
