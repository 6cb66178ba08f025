package org.benchwright.ui.tests;

import java.nio.file.Path;

import org.eclipse.ui.IEditorPart;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Tests of Author, each with a copy of the demo's folder and the C16's procedure open in the editor. */
@ExtendWith(QuietLog.class)
abstract class AtTheEditor {

    @TempDir
    Path temporary;
    Path folder;
    IEditorPart editor;

    @BeforeEach
    void openTheProcedure() throws Exception {
        folder = Engineer.copyOfTheDemo(temporary);
        editor = Engineer.open(folder.resolve(Technician.C16));
    }

    @AfterEach
    void closeIt() {
        Engineer.closeAll();
    }
}
