package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.RemarkCode;
import org.benchwright.ui.internal.author.AuthorHover;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.Test;

/** A procedure written in the window's editor: remarks as one types, proposals, hovers, ways to declarations, colours. */
class AuthorWindowTest extends AtTheEditor {

    private static final String SOUND = "expect pwr steady within 2 s of on";
    private static final String BROKEN = "expect pwm steady within 2 s of on";

    private void waitForRemark(RemarkCode code) {
        Screen.waitFor("the mark in the text", () -> Engineer.marks(editor).stream().anyMatch(m -> m.remark().code() == code));
        Screen.waitFor("the row in Remarks", () -> Engineer.remarkRows().stream().anyMatch(row -> row.get(4).equals(code.word())));
    }

    @Test
    void aMistakeIsRemarkedOnInTheTextAndInRemarksUntilItIsMended() {
        Screen.waitFor("a clean folder", () -> Engineer.remarksSay().contains("no remarks"));
        Engineer.replace(editor, SOUND, BROKEN);
        waitForRemark(RemarkCode.UNKNOWN_LAMP);
        assertEquals("The family has no lamp 'pwm'.", Engineer.marks(editor).get(0).remark().words());
        assertTrue(Engineer.marks(editor).get(0).getText().contains("unknown-lamp"));
        List<String> row = Engineer.remarkRows().get(0);
        assertEquals(List.of("error", "The family has no lamp 'pwm'.", Technician.C16), row.subList(0, 3));
        assertTrue(Engineer.remarksSay().contains("errors: 1"), Engineer.remarksSay());

        Engineer.replace(editor, BROKEN, SOUND);
        Screen.waitFor("no mark", () -> Engineer.marks(editor).isEmpty());
        Screen.waitFor("no row", () -> Engineer.remarkRows().isEmpty());
        assertTrue(Engineer.remarksSay().contains("no remarks"), Engineer.remarksSay());
    }

    @Test
    void aRemarkIsOpenedFromTheListAtItsPlace() {
        Engineer.replace(editor, SOUND, BROKEN);
        waitForRemark(RemarkCode.UNKNOWN_LAMP);
        Engineer.text(editor).setSelection(0);
        Engineer.openRemark(0);
        assertEquals("pwm", Engineer.text(editor).getSelectionText());
    }

    @Test
    void closingWithoutSavingTakesTheRemarksBack() {
        Engineer.replace(editor, SOUND, BROKEN);
        waitForRemark(RemarkCode.UNKNOWN_LAMP);
        Engineer.closeAll();
        Screen.waitFor("no row", () -> Engineer.remarkRows().isEmpty());
    }

    @Test
    void aChangeInTheFamilyIsRemarkedOnInTheProcedureThatIsOpenToo() throws Exception {
        IEditorPart family = Engineer.open(folder.resolve("tarn.family"));
        Engineer.replace(family, "lamp pwr", "lamp power");
        waitForRemark(RemarkCode.UNKNOWN_LAMP);
        assertTrue(Engineer.remarkRows().stream().anyMatch(row -> row.get(2).equals("tarn-p24-acceptance.procedure")),
                "files that are not open are looked at too");
        Engineer.replace(family, "lamp power", "lamp pwr");
        Screen.waitFor("no mark", () -> Engineer.marks(editor).isEmpty());
        Screen.waitFor("no row", () -> Engineer.remarkRows().isEmpty());
    }

    @Test
    void lampsOfTheFamilyAreProposedAndOneIsTaken() {
        Engineer.goBehind(editor, "            expect p");
        ((ITextOperationTarget) Engineer.viewer(editor)).doOperation(ISourceViewer.CONTENTASSIST_PROPOSALS);
        Screen.waitFor("the list", () -> Engineer.proposals().stream().anyMatch(text -> text.startsWith("pwr   Lamp pwr: Power")));
    }

    @Test
    void theHoverSaysWhatALampMeans() throws Exception {
        ISourceViewer viewer = Engineer.viewer(editor);
        AuthorHover hover = new AuthorHover();
        IRegion word = hover.getHoverRegion(viewer, viewer.getDocument().get().indexOf(SOUND) + 8);
        assertEquals("pwr", viewer.getDocument().get(word.getOffset(), word.getLength()));
        CompletableFuture<Object> said = CompletableFuture.supplyAsync(() -> hover.getHoverInfo2(viewer, word));
        Screen.waitFor("the hover", said::isDone);
        assertTrue(String.valueOf(said.get()).startsWith("Lamp pwr: Power\nMarked \"PWR\"."), String.valueOf(said.get()));
    }

    @Test
    void theDeclarationKeyGoesToTheFamily() {
        Screen.waitFor("colours, so that the language has looked", () -> colours().size() > 5);
        Engineer.goBehind(editor, "expect pw");
        ((ITextEditor) editor).getAction("OpenHyperlink").run();
        Screen.waitFor("the family", () -> Screen.page().getActiveEditor().getTitle().equals("tarn.family"));
        assertEquals("pwr", Engineer.text(Screen.page().getActiveEditor()).getSelectionText());
    }

    @Test
    void contentsGoToAStep() {
        assertEquals("c16_acceptance  C16 acceptance on the bench, revision 2", Engineer.contents().getItem(0).getText());
        Screen.waitFor("stages", () -> Stream.of(Engineer.contents().getItem(0).getItems())
                .anyMatch(item -> item.getText().equals("power_up  Power up")));
    }

    @Test
    void meaningsHaveColoursThatFollowTheLook() {
        Screen.waitFor("colours", () -> colours().size() > 5);
        Color light = colourOf("procedure c16");
        Color lightWords = colourInContents();
        Theme.use(PlatformUI.getWorkbench(), true);
        try {
            Screen.waitFor("other colours", () -> !light.equals(colourOf("procedure c16")));
            assertNotEquals(light, colourOf("procedure c16"));
            assertTrue(colours().size() > 5);
            Screen.waitFor("another colour in Contents", () -> !lightWords.equals(colourInContents()));
        } finally {
            Theme.use(PlatformUI.getWorkbench(), false);
        }
        Screen.waitFor("the first colours", () -> light.equals(colourOf("procedure c16")));
    }

    @Test
    void afterManyEditsTheTextLooksLikeOneThatWasOpenedSo() throws Exception {
        Screen.waitFor("colours", () -> colours().size() > 5);
        Random random = new Random(42);
        StyledText text = Engineer.text(editor);
        for (int i = 0; i < 60; i++) {
            int at = random.nextInt(text.getCharCount());
            int length = Math.min(random.nextInt(12), text.getCharCount() - at);
            text.replaceTextRange(at, length, List.of("", "x", " ", "\n", "\"", "step ", "{", "expect pwr steady").get(random.nextInt(8)));
            if (i % 7 == 0) {
                Screen.settle();
            }
        }
        Path copy = folder.resolve("copy.procedure");
        Files.writeString(copy, text.getText());
        IEditorPart fresh = Engineer.open(copy);
        StyledText opened = Engineer.text(fresh);
        Screen.waitFor("the same look", () -> looks(text).equals(looks(opened)) && looks(opened).stream().distinct().count() > 3);
    }

    private static List<String> looks(StyledText text) {
        List<String> looks = new ArrayList<>();
        for (int i = 0; i < text.getCharCount(); i++) {
            var style = text.getStyleRangeAtOffset(i);
            boolean blank = Character.isWhitespace(text.getTextRange(i, 1).charAt(0));
            looks.add(blank ? "" : style == null ? "none" : style.foreground + " " + style.fontStyle);
        }
        return looks;
    }

    private Set<Color> colours() {
        return Stream.of(Engineer.text(editor).getStyleRanges()).map(range -> range.foreground)
                .collect(Collectors.toSet());
    }

    private Color colourOf(String passage) {
        StyledText text = Engineer.text(editor);
        return text.getStyleRangeAtOffset(text.getText().indexOf(passage)).foreground;
    }

    /** The colour of the words beside the first name in Contents. */
    private static Color colourInContents() {
        return ((StyleRange[]) Engineer.contents().getItem(0).getData("org.eclipse.jfacestyled_label_key_0"))[0].foreground;
    }
}
