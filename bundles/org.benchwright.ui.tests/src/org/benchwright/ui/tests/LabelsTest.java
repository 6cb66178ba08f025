package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.present.EntryRefusedException;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What is read in a label or a box has every letter that was written. */
@ExtendWith(QuietLog.class)
class LabelsTest {

    @Test
    void anAmpersandIsALetter() {
        Shell shell = new Shell(Screen.window().getShell());
        try {
            Label label = new Label(shell, SWT.NONE);
            assertTrue(Labels.say(label, "Quarry & Mill"));
            assertEquals("Quarry && Mill", label.getText(), "one alone would mark a key");
            assertEquals("Quarry & Mill", Labels.said(label));
            assertFalse(Labels.say(label, "Quarry & Mill"), "it says so already");
            assertTrue(Labels.say(label, "Quarry"));
        } finally {
            shell.dispose();
        }
    }

    @Test
    void aBoxTellsItToo() throws Exception {
        Dialogs.answered("Benchwright", () -> Failures.tell(Screen.window().getShell(), new EntryRefusedException("No folder R&D.")), box -> {
            List<String> said = Screen.all(box, Label.class).stream().map(Labels::said).toList();
            List<String> given = Screen.all(box, Label.class).stream().map(Label::getText).toList();
            Dialogs.ok(box);
            assertTrue(given.contains("No folder R&&D."), given.toString());
            assertTrue(said.contains("No folder R&D."), said.toString());
        });
    }
}
