package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The register of people in the window. */
@ExtendWith(QuietLog.class)
class PeopleWindowTest {

    @Test
    void everybodyIsListedWithRolesAndKeysAndHowTheRegisterIsKept() throws Exception {
        Technician.register();
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.PEOPLE_VIEW);
        Screen.waitFor("them", () -> rows().stream().anyMatch(row -> row.startsWith("LW | administrator LW | administrator | can sign | ")));
        assertTrue(rows().stream().anyMatch(row -> row.startsWith("RB | engineer RB | engineer | can sign | ")), rows().toString());
        assertTrue(rows().stream().anyMatch(row -> row.startsWith("KM | supervisor KM | supervisor | can sign | ")), rows().toString());
        assertTrue(rows().get(0).matches(".* \\| [0-9a-f]{16}\\.\\.\\. in use"), rows().toString());
        assertTrue(Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("bench people enroll ID --by ID")));
        Screen.page().showView(Ids.SHEET_VIEW);
    }

    @Test
    void anAdministratorAuthorisesSomebodyForAFamilyAndEndsItAgain(@TempDir Path folder) throws Exception {
        Path procedure = Rack.procedure(folder, "5 h");
        Technician.approve(procedure.toString());
        Screen.perspective(Ids.AUDIT);
        Screen.page().showView(Ids.PEOPLE_VIEW);
        Screen.waitFor("them", () -> rows().stream().anyMatch(row -> row.startsWith("RB | ")));
        Desk desk = Technician.desk();
        desk.station().signIn(desk.ledger(), "LW", Approved.PASSWORD.toCharArray(), "4711".toCharArray());
        try {
            Dialogs.answered("Authorise somebody", () -> Screen.press("Authorise"), dialog -> {
                List<Combo> choices = Screen.all(dialog, Combo.class);
                choose(choices.get(0), "RB:");
                choose(choices.get(1), "rook");
                choose(choices.get(2), "rook_soak_5_h");
                assertTrue(labels(dialog).contains("Password"), labels(dialog).toString());
                assertNotEquals("", signed(dialog, 3, "KM", Approved.PASSWORD), "a supervisor does not keep the register");
                choose(Screen.all(dialog, Combo.class).get(3), "LW:");
                assertTrue(labels(dialog).contains("PIN or badge"), "LW has signed in");
                String refused = signed(dialog, 3, "LW", "0000");
                assertTrue(refused.contains("The PIN is wrong. 2 more"), refused);
                assertEquals("", signed(dialog, 3, "LW", "4711"));
            });
            Screen.waitFor("who may: " + rows(), () -> rows().stream().anyMatch(row -> row.startsWith("RB | ") && row.contains("rook_soak_5_h for rook, ")));
            assertTrue(refusal(procedure, "K-332001", "QN").startsWith("QN is not authorised for"));
            assertEquals("K-332001", opened(procedure, "K-332001", "RB").shown().serial());
            select("RB");
            Dialogs.answered("End an authorisation", () -> Screen.press("End an authorisation"), dialog -> {
                Dialogs.fields(dialog).get(0).setText("moved to another shop");
                assertEquals("", signed(dialog, 1, "LW", "4711"));
            });
            Screen.waitFor("nobody: " + rows(), () -> rows().stream().noneMatch(row -> row.contains("rook_soak_5_h for rook, ")));
        } finally {
            desk.station().signOut();
            Screen.perspective(Ids.AUDIT);
            Screen.page().showView(Ids.SHEET_VIEW);
        }
    }

    private static String signed(Shell dialog, int combo, String by, String secret) {
        choose(Screen.all(dialog, Combo.class).get(combo), by + ":");
        Signer.password(dialog).setText(secret);
        Dialogs.enter(dialog);
        Screen.waitFor("the signature", () -> dialog.isDisposed() || Signer.password(dialog).isEnabled());
        return dialog.isDisposed() ? "" : Dialogs.message(dialog);
    }

    private static OpenTest opened(Path procedure, String serial, String technician) throws Exception {
        CompletableFuture<OpenTest> opening = Technician.desk().open(new Desk.Request(procedure, serial, technician, "bench 1", false));
        Screen.waitFor("opened or refused", opening::isDone);
        return opening.get();
    }

    private static String refusal(Path procedure, String serial, String technician) throws Exception {
        try {
            return opened(procedure, serial, technician).id() + " was opened";
        } catch (ExecutionException refused) {
            return String.valueOf(refused.getCause().getMessage());
        }
    }

    private static void choose(Combo combo, String beginning) {
        combo.select(IntStream.range(0, combo.getItemCount()).filter(i -> combo.getItem(i).startsWith(beginning)).findFirst()
                .orElseThrow(() -> new AssertionError(beginning + " is not among " + List.of(combo.getItems()))));
        combo.notifyListeners(SWT.Modify, new Event());
    }

    private static List<String> labels(Shell dialog) {
        return Screen.all(dialog, Label.class).stream().map(label -> label.getText().replace("&", "")).toList();
    }

    private static void select(String id) {
        Table table = Screen.all(Table.class).filter(each -> each.getColumn(0).getText().equals("Id")).findFirst().orElseThrow();
        int row = IntStream.range(0, table.getItemCount()).filter(i -> table.getItem(i).getText(0).equals(id)).findFirst().orElseThrow();
        Screen.select(table, row);
        Screen.settle();
    }

    private static List<String> rows() {
        return Screen.all(Table.class).filter(table -> table.getColumn(0).getText().equals("Id")).flatMap(table -> Stream.of(table.getItems()))
                .map(item -> IntStream.range(0, item.getParent().getColumnCount()).mapToObj(item::getText).collect(Collectors.joining(" | "))).toList();
    }
}
