package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;

import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.desk.OpenTest;
import org.benchwright.ui.internal.desk.Shown;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A fault log entered into the step card's table, by keyboard alone and from the clipboard. */
@ExtendWith(QuietLog.class)
class FaultLogWindowTest {

    private static final String UNKNOWN = "Not in the family's notes. It is kept, and collected for the engineer.";

    private static final String WREN = """
            family wren "Wren" {
                lamp pwr green "Power"
                keeps fault_log "Fault log" by supply
                fault W01 "Watchdog expired" { means "A scan took too long." next "Soak again warm." }
                fault M02 "Memory differs"
                fault S03 "Supply dipped" { next "Prove the supply first." }
            }
            procedure wren_log "The log of a wren" revision 1 {
                applies to wren
                stage work "Work" { step log "Read the log." { enter fault_log } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    @TempDir
    private Path folder;

    private OpenTest atTheLog(String serial) throws Exception {
        OpenTest test = Technician.open(Files.writeString(folder.resolve("wren.procedure"), WREN).toString(), serial, true);
        assertEquals("log.fault_log", test.shown().key());
        return test;
    }

    /** The table's rows as they are: code, what stands beside it, what it means. */
    private static List<String> rows() {
        Composite table = Technician.lastCode().getParent();
        List<Text> cells = Screen.all(table, Text.class);
        List<Label> words = Screen.all(table, Label.class);
        return IntStream.range(0, words.size()).mapToObj(i -> cells.get(2 * i).getText() + "|" + cells.get(2 * i + 1).getText() + "|" + words.get(i).getText()).toList();
    }

    private static List<String> entered() {
        return rows().stream().map(row -> row.substring(0, row.lastIndexOf('|'))).filter(row -> !row.equals("|")).toList();
    }

    private static Text focused() {
        return (Text) Display.getCurrent().getFocusControl();
    }

    /** Types into whatever has the focus, as the keyboard would. */
    private static void type(String keys) {
        for (char c : keys.toCharArray()) {
            Text field = focused();
            boolean typed = Screen.key(field, c == '\r' ? SWT.CR : c, c);
            if (typed && c != '\r') {
                field.insert(String.valueOf(c));
            }
            Screen.settle();
        }
    }

    private static void focus() {
        Screen.window().getShell().forceActive();
        Technician.lastCode().setFocus();
        Screen.waitFor("the focus", () -> Display.getCurrent().getFocusControl() == Technician.lastCode());
    }

    private static void paste(String text) {
        Screen.copy(text);
        focused().paste();
        Screen.settle();
    }

    private static List<String> log(OpenTest test) {
        return test.shown().soFar().stream().map(TimelineLine::words).filter(words -> words.startsWith("fault log: ")).toList();
    }

    private static void enterOnTheEmptyRow(OpenTest test) {
        Shown before = Technician.seen(test);
        type("\r");
        Technician.after(test, before);
    }

    @Test
    void aLogIsTypedRowByRowAndEachCodeExplainedInItsRow() throws Exception {
        OpenTest test = atTheLog("C16-720001");
        focus();
        type("W01 02:14 second night\r");
        assertEquals(List.of("W01|02:14 second night|Watchdog expired. Soak again warm.", "||"), rows());
        type("Z9");
        assertEquals("Z9||" + UNKNOWN, rows().get(1));
        type("9 odd; S03\r");
        assertEquals(List.of("Z99|odd|" + UNKNOWN, "S03||Supply dipped. Prove the supply first.", "||"), rows().subList(1, 4));
        Screen.key(focused(), SWT.ARROW_UP, (char) 0);
        Screen.key(focused(), SWT.ARROW_UP, (char) 0);
        assertEquals("Z99", focused().getText(), "an earlier row is mended where it stands");
        focused().setText("Z98");
        Screen.key(focused(), SWT.ARROW_DOWN, (char) 0);
        Screen.key(focused(), SWT.ARROW_DOWN, (char) 0);
        enterOnTheEmptyRow(test);
        assertEquals(List.of("fault log: W01 02:14 second night; Z98 odd; S03"), log(test));
        assertEquals(List.of(true, false, true), test.shown().last().explanations().stream().map(each -> each.known()).toList());
    }

    @Test
    void aCopiedTableFillsRowsAboveThoseThatStandBelow() throws Exception {
        OpenTest test = atTheLog("C16-720002");
        focus();
        type("B04\rX\rT05\r");
        Screen.key(focused(), SWT.ARROW_UP, (char) 0);
        Screen.key(focused(), SWT.ARROW_UP, (char) 0);
        focused().selectAll();
        paste("02:14\tW01\tstopped\r\n02:15\tZ99\n\nM02");
        Screen.waitFor("the rows", () -> entered().size() == 5);
        assertEquals(List.of("B04|", "W01|02:14 stopped", "02:15|Z99", "M02|", "T05|"), entered());
        assertEquals("T05", focused().getText(), "and it goes on behind them");
        Screen.key(focused(), SWT.ARROW_DOWN, (char) 0);
        enterOnTheEmptyRow(test);
        assertEquals(List.of("fault log: B04; W01 02:14 stopped; 02:15 Z99; M02; T05"), log(test));
    }

    @Test
    void whatWasEnteredSurvivesANoteAndAThoughtOfMakingSafe() throws Exception {
        OpenTest test = atTheLog("C16-720003");
        focus();
        type("W01 once\rZ99");
        Screen.command("org.benchwright.ui.makeSafe");
        assertEquals(1, Screen.entryFields().size());
        Screen.key(Screen.entryFields().get(0), SWT.ESC, SWT.ESC);
        Screen.settle();
        assertEquals(List.of("W01|once", "Z99|"), entered());
        Shown before = test.shown();
        Screen.command("org.benchwright.ui.note");
        Screen.enter("display flickers");
        Screen.waitFor("the note", () -> test.shown().version() > before.version());
        Technician.seen(test);
        assertEquals(List.of("W01|once", "Z99|"), entered());
    }

    @Test
    void anEmptyLogIsSaidToBeOneAndNothingAtAllIsRefused() throws Exception {
        OpenTest test = atTheLog("C16-720004");
        focus();
        type("\r");
        Screen.waitFor("the refusal", () -> test.shown().last().refused().filter(words -> words.contains("none")).isPresent());
        focus();
        type("none\r");
        assertEquals("none||The log is empty.", rows().get(0));
        enterOnTheEmptyRow(test);
        assertEquals(List.of("fault log: no line"), log(test));
        assertFalse(test.shown().last().refused().isPresent());
    }

    @Test
    void theMakeSafeMarkIsAKeyOnAnEmptyRowAlone() throws Exception {
        OpenTest test = atTheLog("C16-720005");
        focus();
        type("W01 ! really");
        assertEquals("! really", focused().getText());
        type("\r!");
        assertEquals(1, Screen.entryFields().size(), "it asks why");
        Screen.key(Screen.entryFields().get(0), SWT.ESC, SWT.ESC);
        Screen.settle();
        assertEquals("log.fault_log", test.shown().key());
    }
}
