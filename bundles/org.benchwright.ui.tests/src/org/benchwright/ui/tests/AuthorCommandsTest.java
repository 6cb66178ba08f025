package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.FolderSession;
import org.benchwright.language.editing.Place;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.author.FolderEdits;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the keys of the editor do at the caret: mend, explain, rename, where used. */
class AuthorCommandsTest extends AtTheEditor {

    private static final String SOUND = "expect pwr steady within 2 s of on";
    private static final String BROKEN = "expect pwm steady within 2 s of on";

    @BeforeEach
    void waitForACleanFolder() {
        Screen.waitFor("a clean folder", () -> Engineer.remarksSay().contains("no remarks"));
    }

    @Test
    void aBrokenNameIsMendedByTheWayThatIsOfferedAndStaysUnsaved() throws Exception {
        breakTheName();
        List<String> offered = new ArrayList<>();
        Dialogs.answered("Mend", () -> Engineer.press("M1+."), dialog -> {
            offered.addAll(Dialogs.rows(dialog));
            Dialogs.select(dialog, 0);
            Dialogs.ok(dialog);
        });
        Screen.waitFor("the name as it was", () -> Engineer.text(editor).getText().contains(SOUND));
        Screen.waitFor("no mark", () -> Engineer.marks(editor).isEmpty());
        Screen.waitFor("no row", () -> Engineer.remarkRows().isEmpty());
        assertTrue(offered.get(0).contains("pwr"), offered.toString());
        assertTrue(editor.isDirty(), "what was not saved stays so");
    }

    /** What was found out a moment ago would stand in the wrong places in a text that somebody has typed into since. */
    @Test
    void nothingIsEditedInATextThatHasChangedMeanwhile() throws Exception {
        Path file = folder.resolve(Technician.C16);
        FolderSession session = FolderSession.open(folder);
        String before = Engineer.text(editor).getText();
        Edit edit = new Edit(new Place(file, before.indexOf(SOUND), SOUND.length()), "expect ok green steady");
        FolderEdits edits = FolderEdits.of(session, List.of(edit));
        Engineer.text(editor).replaceTextRange(0, 0, "// typed meanwhile\n");
        assertFalse(edits.make());
        assertEquals("// typed meanwhile\n" + before, Engineer.text(editor).getText());
        Engineer.text(editor).replaceTextRange(0, "// typed meanwhile\n".length(), "");
        assertTrue(edits.make());
        assertTrue(Engineer.text(editor).getText().contains("expect ok green steady"));
    }

    /** Whoever goes through the files by the keyboard finds the one that was selected. */
    @Test
    void theProcedureThatIsSelectedStaysSo() throws Exception {
        Screen.page().showView(Ids.PROCEDURES_VIEW);
        Table files = Screen.one(Table.class, table -> table.getItemCount() > 2 && table.getItem(0).getText().endsWith(".procedure"));
        files.setSelection(1);
        Screen.page().showView(Ids.CONTENTS_VIEW);
        Screen.page().showView(Ids.PROCEDURES_VIEW);
        assertEquals(1, files.getSelectionIndex());
    }

    @Test
    void theEditorBringsNoButtonsOfThePlatformIntoTheWindow() {
        Set<String> buttons = Screen.all(ToolBar.class).filter(bar -> !inTabs(bar)).flatMap(bar -> Stream.of(bar.getItems()))
                .filter(item -> (item.getStyle() & SWT.SEPARATOR) == 0).map(item -> item.getText().isEmpty() ? item.getToolTipText() : item.getText())
                .collect(Collectors.toSet());
        assertEquals(Set.of("Author", "Bench", "Audit", "New test", "Make safe (F12)"), buttons);
    }

    @Test
    void theMenuInTheEditorHasNothingForWritingPrograms() {
        StyledText text = Engineer.text(editor);
        text.notifyListeners(SWT.MenuDetect, new Event());
        Menu menu = text.getMenu();
        menu.notifyListeners(SWT.Show, new Event());
        assertEquals(List.of("Undo", "Revert File", "Save", "Cut", "Copy", "Paste", "Shift Right", "Shift Left", "Rename ...", "Where used ...", "Mend ...",
                "What this means"), Stream.of(menu.getItems()).filter(item -> (item.getStyle() & SWT.SEPARATOR) == 0)
                .map(item -> item.getText().replace("&", "").replaceAll("\t.*", "")).toList());
        menu.notifyListeners(SWT.Hide, new Event());
    }

    private static boolean inTabs(Control control) {
        return control instanceof CTabFolder || control.getParent() != null && inTabs(control.getParent());
    }

    @Test
    void whatARemarkMeansIsShownFromTheCaretAndFromTheList() throws Exception {
        breakTheName();
        Engineer.press("F1");
        Screen.waitFor("the page", () -> page().startsWith("unknown-lamp"));
        assertTrue(page().contains("Error: No lamp of that name in the family."), page());
        assertTrue(page().contains("expect pwer steady within 5 s of now"), page());
        assertFalse(page().contains("```"), page());

        Screen.page().hideView(Screen.page().findView(Ids.PAGE_VIEW));
        Engineer.replace(editor, "pwm steady within 2 s", "pwr steady within 500 ms");
        Screen.waitFor("the other remark", () -> Engineer.remarkRows().size() == 1
                && Engineer.remarkRows().get(0).get(4).equals("deadline-too-short-for-hand"));
        Screen.page().activate(Screen.page().findView(Ids.REMARKS_VIEW));
        Engineer.selectRemark(0);
        Engineer.press("F1");
        Screen.waitFor("the other page", () -> page().startsWith("deadline-too-short-for-hand"));
    }

    @Test
    void aLampIsRenamedInAllFiles() throws Exception {
        Engineer.goBehind(editor, "expect pw");
        Dialogs.answered("Rename", () -> Engineer.press("M1+R"), dialog -> {
            Text name = Screen.all(dialog, Text.class).get(0);
            assertEquals("pwr", name.getText());
            name.setText("power");
            Dialogs.ok(dialog);
        });
        Screen.waitFor("the new name", () -> Engineer.text(editor).getText().contains("expect power steady within 2 s of on"));
        assertTrue(Files.readString(folder.resolve("tarn.family")).contains("lamp power "), "the declaration, in a file that is not open");
        assertTrue(Files.readString(folder.resolve("tarn-p24-acceptance.procedure")).contains("expect power "), "another procedure");
        assertFalse(editor.isDirty(), "what was saved stays so");
        Screen.waitFor("a clean folder", () -> Engineer.remarksSay().contains("no remarks") && Engineer.marks(editor).isEmpty());
    }

    @Test
    void whereALampIsUsedIsListedAndTheDeclarationGoneTo() throws Exception {
        Engineer.goBehind(editor, "expect pw");
        List<String> uses = new ArrayList<>();
        Dialogs.answered("Where used", () -> Engineer.press("M1+U"), dialog -> {
            uses.addAll(Dialogs.rows(dialog));
            Dialogs.select(dialog, uses.indexOf(uses.stream().filter(use -> use.contains("lamp pwr")).findFirst().orElseThrow()));
            Dialogs.ok(dialog);
        });
        Screen.waitFor("the family", () -> Screen.page().getActiveEditor().getTitle().equals("tarn.family"));
        assertEquals("pwr", Engineer.text(Screen.page().getActiveEditor()).getSelectionText());
        assertTrue(uses.stream().anyMatch(use -> use.startsWith(Technician.C16) && use.contains(SOUND)), uses.toString());
        assertTrue(uses.stream().anyMatch(use -> use.startsWith("tarn-p24-acceptance.procedure")), uses.toString());
    }

    private void breakTheName() {
        Engineer.replace(editor, SOUND, BROKEN);
        Screen.waitFor("the mark", () -> !Engineer.marks(editor).isEmpty() && !Engineer.remarkRows().isEmpty());
        Engineer.goBehind(editor, "expect pw");
    }

    private static String page() {
        return Screen.page().findView(Ids.PAGE_VIEW) == null ? "" : Screen.all(StyledText.class).map(StyledText::getText)
                .filter(text -> text.startsWith("unknown-lamp") || text.startsWith("deadline-too")).findFirst().orElse("");
    }
}
