package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.Receiving;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.house.House;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Whoever closes a dialog at once takes what it has begun for done: it is shown as soon as it is, and told in a box if it is refused. */
@ExtendWith(QuietLog.class)
class ClosedTooSoonTest {

    private static Table broken(Path folder, String serial) throws Exception {
        Auditor.test(folder, serial, false);
        Table list = Auditor.list(Ids.NONCONFORMITIES_VIEW);
        Screen.waitFor("the row", () -> Auditor.rows(list, serial).size() == 1);
        Auditor.select(Ids.NONCONFORMITIES_VIEW, Auditor.rows(list, serial).get(0));
        return list;
    }

    private static void scrap(Shell dialog, String by) {
        Auditor.choose(dialog, "scrap");
        Dialogs.fields(dialog).get(0).setText("not worth a repair");
        Auditor.password(dialog, by, Approved.PASSWORD);
        Dialogs.press(dialog, "Sign");
    }

    @Test
    void aSignatureThatIsRefusedIsTold(@TempDir Path folder) throws Exception {
        Table list = broken(folder, "F-311001");
        String told = Dialogs.refusedBehind("Decide on a nonconformity", () -> Screen.press("Decide"), dialog -> scrap(dialog, "QN"));
        assertTrue(told.contains("QN had a hand in this test"), told);
        assertEquals(1, Auditor.rows(list, "F-311001").size());
    }

    @Test
    void aSignatureIsShown(@TempDir Path folder) throws Exception {
        Table list = broken(folder, "F-311002");
        Dialogs.answered("Decide on a nonconformity", () -> Screen.press("Decide"), dialog -> {
            scrap(dialog, "MJ");
            dialog.close();
        });
        Screen.waitFor("the list without it", () -> Auditor.rows(list, "F-311002").isEmpty());
        Screen.waitFor("it on the sheet", () -> Auditor.sheet("F-311002").contains("scrap by MJ: not worth a repair"));
    }

    @Test
    void aReturnThatIsRefusedIsTold(@TempDir Path folder) throws Exception {
        OpenTest test = Auditor.test(folder, "F-311003", true);
        Auditor.showSheet(test, "F-311003");
        Screen.waitFor("that it can come back", () -> Auditor.enabled("It came back"));
        String told = Dialogs.refusedBehind("A unit came back", () -> Screen.press("It came back"), dialog -> {
            Dialogs.fields(dialog).get(2).setText("QN");
            Dialogs.press(dialog, "Record");
        });
        assertTrue(told.contains("Nothing was entered"), told);
        assertTrue(Auditor.enabled("It came back"), "it did not");
    }

    @Test
    void aPasswordThatIsRefusedIsTold() throws Exception {
        Technician.register();
        String told = Dialogs.refusedBehind("Sign in", () -> Screen.command("org.benchwright.ui.signIn"), dialog -> {
            Dialogs.fields(dialog).get(0).setText("RB");
            Dialogs.fields(dialog).get(1).setText("not this one");
            Dialogs.fields(dialog).get(2).setText("4711");
            Dialogs.press(dialog, "Sign in");
        });
        assertTrue(told.contains("not the password of RB"), told);
        assertEquals(Optional.empty(), Technician.desk().station().person());
    }

    @Test
    void aCorrectionThatIsRefusedIsTold() throws Exception {
        HouseWindowTest.show();
        var received = PlatformUI.getWorkbench().getService(House.class).enter(receiving -> receiving.receive(
                new Receiving.Arriving("", "", "C16-311004", "read", true, true, "", "", "", "", List.of()), "QN"));
        Screen.waitFor("the receipt", received::isDone);
        HouseWindowTest.pick("C16-311004");
        String told = Dialogs.refusedBehind("Correct a receipt", () -> Screen.press("Correct ..."), dialog -> Dialogs.press(dialog, "Correct"));
        assertTrue(told.contains("initials"), told);
    }

    @Test
    void aTestThatIsRefusedIsTold() throws Exception {
        Screen.perspective(Ids.BENCH);
        String told = Dialogs.refusedBehind("New test", () -> Screen.command("org.benchwright.ui.newTest"), dialog -> {
            Dialogs.fields(dialog).get(0).setText("C16-311005, C16-311005");
            Dialogs.fields(dialog).get(1).setText("QN");
            Dialogs.press(dialog, "Open");
        });
        assertTrue(told.contains("C16-311005"), told);
        assertTrue(Technician.desk().units().stream().noneMatch(unit -> unit.serial().equals("C16-311005")));
    }
}
