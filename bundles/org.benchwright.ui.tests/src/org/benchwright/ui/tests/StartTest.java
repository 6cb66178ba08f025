package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The page of the first start, and the dialog for a new test. */
@ExtendWith(QuietLog.class)
class StartTest {

    @Test
    void theWindowBearsTheNameOfTheProductAndOfTheUnitThatIsLookedAt() throws Exception {
        Technician.desk().select("");
        Screen.waitFor("the name of the product alone", () -> title().equals("Benchwright"));
        OpenTest test = Technician.open(Technician.C16, "C16-400002", true);
        Screen.waitFor("the unit's", () -> title().equals("C16-400002: entry 1 recorded - Benchwright"));
        test.answer(test.shown().version(), List.of("yes, KG-2026-311"));
        Screen.waitFor("the entry's number", () -> title().equals("C16-400002: entry 2 recorded - Benchwright"));
    }

    private static String title() {
        return Screen.window().getShell().getText();
    }

    /** Where the list of libraries comes with the program it is shown; here it says where it was looked for. */
    @Test
    void aboutTellsTheVersionAndTheLibrariesThatAreInside() throws Exception {
        StringBuilder told = new StringBuilder();
        Dialogs.answered("About Benchwright", () -> Screen.command("org.eclipse.ui.help.aboutAction"), dialog -> {
            StyledText text = Screen.all(dialog, StyledText.class).get(0);
            Screen.waitFor("the list", () -> !text.getText().isEmpty());
            told.append(Signer.message(dialog)).append("\n").append(text.getText());
            Signer.ok(dialog);
        });
        assertTrue(told.toString().startsWith("Benchwright 0.1.0: acceptance of repaired"), told.toString());
        assertTrue(told.toString().contains("LIBRARIES.txt"), told.toString());
    }

    @Test
    void theAuditorIsAtWorkAfterOneClick() throws Exception {
        Screen.perspective(Ids.START);
        Screen.press("Auditor");
        assertEquals(Ids.AUDIT, Screen.page().getPerspective().getId());
    }

    @Test
    void theEngineerIsAtWorkAfterOneClick() throws Exception {
        Screen.perspective(Ids.START);
        Screen.press("Test engineer");
        assertEquals(Ids.AUTHOR, Screen.page().getPerspective().getId());
        Screen.waitFor("the editor", () -> Screen.page().getActiveEditor() != null);
        assertEquals(Technician.C16, Screen.page().getActiveEditor().getTitle());
        Screen.page().closeAllEditors(false);
    }

    @Test
    void theTechnicianIsAskedForTheUnitAfterOneClick() throws Exception {
        Screen.perspective(Ids.START);
        Dialogs.answered("New test", () -> Screen.press("Technician"), StartTest::fillIn);
        assertEquals(Ids.BENCH, Screen.page().getPerspective().getId());
        assertEquals("C16-400001", Technician.desk().selectedTest().get().shown().serial());
        assertTrue(Technician.desk().selectedTest().get().shown().rehearsal());
    }

    private static void fillIn(Shell dialog) {
        Screen.all(dialog, Text.class).stream().filter(text -> text.getEditable()).findFirst().get().setText("C16-400001");
        Screen.all(dialog, Text.class).stream().filter(text -> text.getEditable()).skip(1).findFirst().get().setText("QN");
        Screen.all(dialog, Button.class).stream().filter(b -> (b.getStyle() & SWT.CHECK) != 0).findFirst().get().setSelection(true);
        Screen.all(dialog, Button.class).stream().filter(b -> Integer.valueOf(IDialogConstants.OK_ID).equals(b.getData())).findFirst().get()
                .notifyListeners(SWT.Selection, new Event());
    }
}
