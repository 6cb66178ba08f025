package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Codes that no note tells reach the engineer: the list in Author, the draft of a note, the family it belongs into. */
@ExtendWith(QuietLog.class)
class FaultCodesWindowTest {

    private static final String SISKIN = """
            family siskin "Siskin" {
                lamp pwr green "Power"
                keeps fault_log "Fault log" by supply
                fault W01 "Watchdog expired"
            }
            procedure siskin_log "The log of a siskin" revision 1 {
                applies to siskin
                stage work "Work" { step log "Read the log." { enter fault_log } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    private static Table codes() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 8);
    }

    private static List<String> rows() {
        return Stream.of(codes().getItems()).filter(item -> item.getText(1).equals("Siskin")).map(FaultCodesWindowTest::row).toList();
    }

    private static String row(TableItem item) {
        return item.getText(0) + " " + item.getText(2) + " " + item.getText(4) + " " + item.getText(3);
    }

    private static void select(String code) {
        Table table = codes();
        int row = IntStream.range(0, table.getItemCount()).filter(i -> table.getItem(i).getText(0).equals(code) && table.getItem(i).getText(1).equals("Siskin")).findFirst()
                .orElseThrow();
        // F3 is a key of the editor, too: it is the view's while that is used.
        Screen.page().activate(Screen.page().findView(Ids.FAULT_CODES_VIEW));
        Screen.select(table, row);
        Screen.settle();
    }

    @Test
    void anUnknownCodeIsListedCopiedAsANoteAndPastedIntoItsFamily(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("siskin.procedure"), SISKIN);
        OpenTest test = Technician.open(file.toString(), "SK-740001", false);
        Shown asked = Technician.seen(test);
        Screen.entryFields().get(0).setText("Q17 after an hour\nW01");
        Screen.settle();
        Screen.key(Technician.lastCode(), SWT.CR, '\r');
        Screen.waitFor("the log", () -> test.shown().version() > asked.version());
        IEditorPart editor = Engineer.open(file);
        try {
            Screen.page().showView(Ids.FAULT_CODES_VIEW);
            // Another test may have looked here before.
            Screen.press("Read again");
            Screen.waitFor("the code", () -> rows().equals(List.of("Q17 none 1 after an hour")));
            Screen.tick("Also codes with a note", true);
            Screen.waitFor("those with a note too", () -> rows().containsAll(List.of("Q17 none 1 after an hour", "W01 yes 1 ")));
            select("Q17");
            Screen.key(codes(), SWT.F3, (char) 0);
            Screen.waitFor("the family, behind its last note", () -> caret(editor) == SISKIN.indexOf("\"Watchdog expired\"") + "\"Watchdog expired\"".length());
            select("Q17");
            Screen.press("Copy a note");
            String note = Screen.copied();
            assertEquals("// stood beside it: after an hour\nfault Q17 \"\" {\n    means \"\"\n    often \"\"\n    next \"\"\n}", note);
            Engineer.replace(editor, "\"Watchdog expired\"", "\"Watchdog expired\"\n" + note.replace("Q17 \"\"", "Q17 \"Quiet\""));
            Screen.waitFor("no mistake in it: " + Engineer.marks(editor), () -> Engineer.marks(editor).isEmpty());
            select("Q17");
            Screen.waitFor("a note by now", () -> rows().contains("Q17 since then 1 after an hour"));
            Screen.key(codes(), SWT.F3, (char) 0);
            Screen.waitFor("its note", () -> caret(editor) == Engineer.text(editor).getText().indexOf("Q17 \"Quiet\""));
        } finally {
            Engineer.closeAll();
            Screen.page().showView(Ids.REMARKS_VIEW);
        }
        assertFalse(test.shown().elsewhere());
        assertTrue(test.shown().soFar().toString().contains("Q17"));
    }

    private static int caret(IEditorPart editor) {
        return ((ITextSelection) ((ITextEditor) editor).getSelectionProvider().getSelection()).getOffset();
    }
}
