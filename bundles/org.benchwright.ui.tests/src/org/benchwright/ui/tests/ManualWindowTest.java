package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

import org.benchwright.present.HelpPage;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.help.PageView;
import org.benchwright.ui.internal.look.Theme;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewPart;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** F1 opens the page of the manual for the view that is active, and the Help menu what there is; from there all else is a key or a click away. */
@ExtendWith(QuietLog.class)
class ManualWindowTest {

    private static final String BACK = "M3+ARROW_LEFT";
    private static final String FORWARD = "M3+ARROW_RIGHT";
    private static final String TECHNICIAN = "The technician: receive";

    @AfterEach
    void closeThePage() {
        Theme.use(PlatformUI.getWorkbench(), false);
        IViewPart page = Screen.page().findView(Ids.PAGE_VIEW);
        if (page != null) {
            Screen.page().hideView(page);
        }
    }

    @ParameterizedTest
    @CsvSource({Ids.BENCH + ", " + Ids.CARD_VIEW + ", The technician: receive", Ids.BENCH + ", " + Ids.INSTRUMENTS_VIEW + ", Who owns the bench",
        Ids.AUDIT + ", " + Ids.DEPARTURES_VIEW + ", The auditor: decide", Ids.AUDIT + ", " + Ids.CHECK_VIEW + ", What tampering",
        Ids.AUTHOR + ", " + Ids.PROOF_VIEW + ", What a procedure proves"})
    void thePageForWhatIsInFrontIsShown(String perspective, String view, String beginning) throws Exception {
        Screen.perspective(perspective);
        Screen.page().activate(Screen.page().showView(view));
        Engineer.press("F1");
        Screen.waitFor("the page", () -> !Screen.story(beginning).isEmpty());
        String shown = Screen.story(beginning);
        assertFalse(shown.contains("```") || shown.contains("](") || shown.contains("<!--") || shown.contains("| ---"), shown);
        assertTrue(Screen.page().isPartVisible(Screen.page().findView(view)), "the page hides nothing that it is about");
    }

    @Test
    void theContentsAreInTheMenu() throws Exception {
        Screen.perspective(Ids.BENCH);
        Screen.command("org.benchwright.ui.manual");
        Screen.waitFor("the contents", () -> Screen.story("Documentation\n").contains("the technician"));
    }

    @Test
    void aLinkIsFollowedByKeysAndTheWayBackToo() throws Exception {
        open(HelpPage.README, "Documentation");
        tabTo("the technician");
        enter();
        awaitPage(TECHNICIAN);
        Engineer.press(BACK);
        awaitPage("Documentation");
        Engineer.press(FORWARD);
        awaitPage(TECHNICIAN);
    }

    @Test
    void aLinkToAHeadingScrollsToIt() throws Exception {
        open(HelpPage.PERFORMANCE, "Performance\n");
        tabTo("ledger");
        enter();
        Screen.waitFor("the heading", () -> lineOfCaret().equals("ledger"));
        assertNotEquals(0, sheet().getTopPixel());
        Engineer.press(BACK);
        Screen.waitFor("the beginning", () -> sheet().getTopPixel() == 0);
    }

    @Test
    void whatIsNotInTheProgramIsSaid() throws Exception {
        open(HelpPage.README, "Documentation");
        tabTo("first page");
        enter();
        awaitPage("Benchwright\n");
        tabTo("docs/screens");
        enter();
        Screen.waitFor("the words", () -> says("This does not come with the program: docs/screens"));
        assertTrue(text().startsWith("Benchwright\n"), "the page stays");
    }

    @Test
    void aPictureIsAsWideAsThePageAtMost() throws Exception {
        open(HelpPage.TECHNICIAN, TECHNICIAN);
        List<StyleRange> pictures = Arrays.stream(sheet().getStyleRanges()).filter(style -> style.metrics != null).toList();
        assertEquals(4, pictures.size());
        int room = sheet().getClientArea().width;
        for (StyleRange picture : pictures) {
            assertTrue(picture.metrics.width > room / 2 && picture.metrics.width <= room, picture.metrics.width + " of " + room);
            assertTrue(picture.metrics.ascent > picture.metrics.width / 4, "as high as it was");
        }
        sheet().setSelection(pictures.get(0).start);
        sheet().setTopIndex(sheet().getLineAtOffset(pictures.get(0).start));
        Screen.waitFor("many colours", () -> colours() > 100);
    }

    private static int colours() {
        var page = sheet();
        var origin = page.toDisplay(0, 0);
        var area = page.getClientArea();
        var data = Screen.picture(new Rectangle(origin.x, origin.y, area.width, area.height));
        Set<Integer> seen = new HashSet<>();
        for (int x = 0; x < data.width; x += 3) {
            for (int y = 0; y < data.height; y += 3) {
                seen.add(data.getPixel(x, y));
            }
        }
        return seen.size();
    }

    @Test
    void cellsOfATableStandBesideOneAnother() throws Exception {
        open(HelpPage.README, "Documentation");
        Place first = place("for whom");
        Place second = place("page\n");
        assertEquals(first.y(), second.y());
        assertTrue(second.x() > first.x() + 50, second.toString());
        assertEquals(second.x(), place("the test engineer").x(), "one below the other");
    }

    @Test
    void aTableIsSetAnewWhereThereIsMoreRoom() throws Exception {
        open(HelpPage.WATCH, "The watch");
        long narrow = text().lines().count();
        Screen.page().toggleZoom(Screen.page().findViewReference(Ids.PAGE_VIEW));
        Screen.waitFor("fewer lines", () -> text().lines().count() < narrow);
    }

    private record Place(int x, int y) {
    }

    private static Place place(String words) {
        var at = sheet().getLocationAtOffset(text().indexOf(words));
        return new Place(at.x, at.y);
    }

    @Test
    void thePageIsSearched() throws Exception {
        open(HelpPage.TECHNICIAN, TECHNICIAN);
        Engineer.press("M1+F");
        Text field = Screen.one(Text.class, text -> text.getMessage().equals("Search this page"));
        assertTrue(field.isFocusControl());
        field.setText("MAKE SAFE");
        Screen.waitFor("what was found", () -> sheet().getSelectionText().equalsIgnoreCase("make safe"));
        int first = sheet().getSelection().x;
        assertTrue(says("1 of "));
        Screen.key(field, SWT.CR, '\r');
        assertTrue(sheet().getSelection().x > first);
        assertTrue(says("2 of "));
        field.setText("no such words");
        assertTrue(says("Not on this page."));
        Screen.key(field, SWT.ESC, SWT.ESC);
        assertTrue(sheet().isFocusControl());
    }

    @Test
    void headingsAreGoneTo() throws Exception {
        open(HelpPage.DEPLOYMENT, "Putting");
        Combo headings = Screen.one(Combo.class, combo -> Arrays.asList(combo.getItems()).contains("Backup"));
        headings.select(Arrays.asList(headings.getItems()).indexOf("Backup"));
        headings.notifyListeners(SWT.Selection, new Event());
        assertEquals("Backup", lineOfCaret());
    }

    @Test
    void theDarkLookHasColoursOfItsOwn() throws Exception {
        open(HelpPage.README, "Documentation");
        var light = sheet().getStyleRangeAtOffset(text().indexOf("the technician")).foreground;
        Theme.use(PlatformUI.getWorkbench(), true);
        Screen.waitFor("another colour", () -> !light.equals(sheet().getStyleRangeAtOffset(text().indexOf("the technician")).foreground));
    }

    private static void open(HelpPage page, String beginning) throws Exception {
        Screen.perspective(Ids.BENCH);
        PageView.show(Screen.page(), page);
        awaitPage(beginning);
        Screen.page().activate(Screen.page().findView(Ids.PAGE_VIEW));
        sheet().setFocus();
        Screen.settle();
    }

    private static void awaitPage(String beginning) {
        Screen.waitFor(beginning, () -> !Screen.story(beginning).isEmpty());
    }

    private static StyledText sheet() {
        return Screen.one(StyledText.class, text -> PageView.SHEET.equals(text.getData()));
    }

    private static String text() {
        return sheet().getText();
    }

    private static String lineOfCaret() {
        return sheet().getLine(sheet().getLineAtOffset(sheet().getSelection().x));
    }

    private static boolean says(String words) {
        return Screen.all(Label.class).anyMatch(label -> label.getText().startsWith(words));
    }

    private static void tabTo(String words) {
        Optional<String> reached = Stream.generate(() -> {
            sheet().traverse(SWT.TRAVERSE_TAB_NEXT);
            return sheet().getSelectionText();
        }).limit(200).filter(words::equals).findFirst();
        assertTrue(reached.isPresent(), words);
    }

    private static void enter() {
        Screen.key(sheet(), SWT.CR, '\r');
    }
}
