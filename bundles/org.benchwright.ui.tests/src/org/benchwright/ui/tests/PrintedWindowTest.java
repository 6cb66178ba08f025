package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.benchwright.core.PrintedText;
import org.benchwright.core.SignalWord;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.author.PrintedParagraphs;
import org.benchwright.ui.internal.look.Palette;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Event;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** As printed: follows the text as it is written, its families and the caret; leads back to the text; keeps what it showed while there are errors. */
class PrintedWindowTest extends AtTheEditor {

    @BeforeEach
    void showAsPrinted() throws Exception {
        Screen.page().showView(Ids.PRINTED_VIEW, null, IWorkbenchPage.VIEW_VISIBLE);
        Screen.waitFor("the sheet", () -> Screen.all(StyledText.class).anyMatch(Engineer::isSheet));
    }

    private static void waitForWords(String words) {
        Screen.waitFor(words, () -> Screen.all(StyledText.class).anyMatch(text -> Engineer.isSheet(text) && text.getText().contains(words)));
    }

    private static int line(String words) {
        return Engineer.sheet().getLineAtOffset(Engineer.sheet().getText().indexOf(words));
    }

    @Test
    void itFollowsWhatIsWritten() {
        waitForWords("Measure supply volts with the Multimeter. Limits: 23.5 .. 24.5 V.");
        Engineer.replace(editor, "limits 23.5 .. 24.5 V, decide guarded both ways", "limits 23.6 .. 24.4 V, decide guarded both ways");
        waitForWords("Measure supply volts with the Multimeter. Limits: 23.6 .. 24.4 V.");
    }

    @Test
    void itFollowsItsFamilyToo() throws Exception {
        IEditorPart family = Engineer.open(folder.resolve("tarn.family"));
        Screen.waitFor("another page", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("This file holds no procedure.")));
        Engineer.replace(family, "\"Power\"", "\"Mains present\"");
        Screen.page().activate(editor);
        waitForWords("PWR (Mains present) green steady within 2 s of \"on\"");
    }

    @Test
    void itGoesToTheStepAtTheCaret() {
        Engineer.goBehind(editor, "step drain \"");
        Screen.waitFor("the step", () -> Engineer.inSight("11.2  drain"));
        Engineer.goBehind(editor, "step plate \"");
        Screen.waitFor("the other step", () -> Engineer.inSight("1.1  plate") && !Engineer.inSight("11.2  drain"));
    }

    @Test
    void whatIsPointedAtIsGoneToInTheText() {
        StyledText sheet = Engineer.sheet();
        sheet.setTopIndex(line("3.2  lamps") - 1);
        Screen.settle();
        Point at = sheet.getLocationAtOffset(sheet.getText().indexOf("PWR (Power) green steady within"));
        Event event = new Event();
        event.x = at.x + 2;
        event.y = at.y + 2;
        sheet.notifyListeners(SWT.MouseUp, event);
        Screen.waitFor("the text", () -> Engineer.text(editor).getSelectionText().equals("lamps"));
    }

    @Test
    void anErrorIsNamedAndWhatWasReadStays() {
        Engineer.replace(editor, "expect pwr steady within 2 s of on", "expect pwm steady within 2 s of on");
        Screen.waitFor("the error", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith(
                "1 error has to be mended first. Above is how it read before.\n" + Technician.C16 + ", line ")));
        assertTrue(Engineer.sheet().getText().contains("PWR (Power) green steady within 2 s of \"on\""));
        Engineer.replace(editor, "expect pwm steady within 2 s of on", "expect pwr steady within 3 s of on");
        waitForWords("PWR (Power) green steady within 3 s of \"on\"");
        Screen.waitFor("no error", () -> Screen.all(StyledText.class).noneMatch(text -> text.getText().contains("has to be mended first")));
    }

    @Test
    void aTextThatNeverWasSoundSaysWhatToMend() throws Exception {
        Path broken = Files.writeString(folder.resolve("broken.procedure"), "procedure p \"P\" revision 1 {\n    applies to nobody\n}\n");
        Engineer.open(broken);
        Screen.waitFor("the errors", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().contains("be mended before it can be read here.")
                && text.getText().contains("broken.procedure, line 2: ")));
    }

    @Test
    void aDangerStandsOnItsColour() {
        StyledText sheet = Engineer.sheet();
        sheet.setTopIndex(line(" DANGER") - 1);
        Screen.waitFor("its colour", () -> Palette.ground(SignalWord.DANGER).getRGB().equals(beside(" DANGER")));
    }

    /** The colour near the right end of a line of the sheet. */
    private static RGB beside(String words) {
        StyledText sheet = Engineer.sheet();
        Point word = sheet.getLocationAtOffset(sheet.getOffsetAtLine(line(words)));
        Point at = sheet.toDisplay(sheet.getClientArea().width - 40, word.y + 3);
        ImageData picture = Screen.picture(new Rectangle(at.x, at.y, 1, 1));
        return picture.palette.getRGB(picture.getPixel(0, 0));
    }

    /** A paragraph is a line of the sheet, or everything below would look like what stands above it, and lead there. */
    @Test
    void wordsWithALineBreakAreSeveralParagraphsOfOnePart() {
        List<PrintedParagraphs.Paragraph> paragraphs = PrintedParagraphs.of(List.of(new PrintedText.Instruction("Fit the unit.\nClose the cover.", "step.fit"),
                new PrintedText.Sentence("Takes 3 min.", ""), new PrintedText.Sentence("", "")));
        assertEquals(List.of("Fit the unit.", "Close the cover.", "Takes 3 min.", ""), paragraphs.stream().map(PrintedParagraphs.Paragraph::words).toList());
        assertEquals(List.of(0, 0, 1, 2), paragraphs.stream().map(PrintedParagraphs.Paragraph::part).toList());
        assertEquals(PrintedParagraphs.Look.INSTRUCTION, paragraphs.get(1).look());
    }
}
