package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Shell;
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
            told.append(Dialogs.message(dialog)).append("\n").append(text.getText());
            Dialogs.enter(dialog);
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
        Dialogs.fields(dialog).get(0).setText("C16-400001");
        Dialogs.fields(dialog).get(1).setText("QN");
        Dialogs.box(dialog).setSelection(true);
        Dialogs.press(dialog, "Open");
    }
}
