package org.benchwright.ui.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.app.Editors;
import org.benchwright.ui.internal.author.RemarkMark;
import org.eclipse.jface.bindings.keys.KeySequence;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.keys.IBindingService;

/** A test engineer at the Author perspective. */
final class Engineer {

    private Engineer() {
    }

    /**
     * A copy of the demo folder, to be changed at will. Its C16's procedure is revision 2: other tests of this window may have approved
     * revision 1, and an approved text that is changed has an error.
     */
    static Path copyOfTheDemo(Path below) throws IOException {
        Path folder = Files.createDirectories(below.resolve("procedures"));
        try (Stream<Path> files = Files.list(Technician.procedures())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Path procedure = folder.resolve(Technician.C16);
        Files.writeString(procedure, Files.readString(procedure).replace(" revision 1 {", " revision 2 {"));
        return folder;
    }

    /** Opens a file in the Author perspective and waits until the language has looked at it. */
    static IEditorPart open(Path file) throws Exception {
        Screen.perspective(Ids.AUTHOR);
        // Without a window manager nobody does after a dialog, and the list of proposals closes where the window has no focus.
        Screen.window().getShell().forceActive();
        Editors.open(Screen.page(), file);
        IEditorPart editor = Screen.page().getActiveEditor();
        Screen.waitFor("the contents", () -> contents().getItemCount() > 0);
        return editor;
    }

    static ISourceViewer viewer(IEditorPart editor) {
        return (ISourceViewer) editor.getAdapter(ITextOperationTarget.class);
    }

    static StyledText text(IEditorPart editor) {
        return viewer(editor).getTextWidget();
    }

    /** Puts something in place of the first such passage, as if typed. */
    static void replace(IEditorPart editor, String passage, String other) {
        StyledText text = text(editor);
        int at = text.getText().indexOf(passage);
        if (at < 0) {
            throw new AssertionError("not in the text: " + passage);
        }
        text.replaceTextRange(at, passage.length(), other);
    }

    /** Puts the caret behind the first such passage. */
    static void goBehind(IEditorPart editor, String passage) {
        StyledText text = text(editor);
        text.setFocus();
        text.setSelection(text.getText().indexOf(passage) + passage.length());
    }

    /** The remarks that are shown in the text. */
    static List<RemarkMark> marks(IEditorPart editor) {
        List<RemarkMark> marks = new ArrayList<>();
        for (Iterator<Annotation> all = viewer(editor).getAnnotationModel().getAnnotationIterator(); all.hasNext();) {
            if (all.next() instanceof RemarkMark mark) {
                marks.add(mark);
            }
        }
        return marks;
    }

    private static Table remarks() {
        return Screen.one(Table.class, table -> table.getColumnCount() == 5 && table.getColumn(4).getText().equals("Code"));
    }

    /** The rows of Remarks: severity, words, file, line, code. */
    static List<List<String>> remarkRows() {
        return Stream.of(remarks().getItems()).map(Engineer::cells).toList();
    }

    private static List<String> cells(TableItem item) {
        return List.of(item.getText(0), item.getText(1), item.getText(2), item.getText(3), item.getText(4));
    }

    /** Opens a row of Remarks. */
    static void openRemark(int row) {
        remarks().setSelection(row);
        Event event = new Event();
        event.item = remarks().getItem(row);
        remarks().notifyListeners(SWT.Selection, event);
        remarks().notifyListeners(SWT.DefaultSelection, event);
        Screen.settle();
    }

    /** Runs what a key is bound to. */
    static void press(String key) throws Exception {
        IBindingService keys = PlatformUI.getWorkbench().getService(IBindingService.class);
        Screen.settle();
        PlatformUI.getWorkbench().getService(IHandlerService.class)
                .executeCommand(keys.getPerfectMatch(KeySequence.getInstance(key)).getParameterizedCommand(), null);
    }

    /** Selects a row of Remarks. */
    static void selectRemark(int row) {
        Screen.select(remarks(), row);
        Screen.settle();
    }

    /** What Remarks says of itself. */
    static String remarksSay() {
        return Screen.page().findViewReference(Ids.REMARKS_VIEW).getContentDescription();
    }

    /** The tree of Contents. */
    static Tree contents() {
        return Screen.one(Tree.class, tree -> true);
    }

    /** The sheet of As printed, once it shows the C16's procedure. */
    static StyledText sheet() {
        return Screen.one(StyledText.class, Engineer::isSheet);
    }

    static boolean isSheet(StyledText text) {
        return text.getText().startsWith("C16 acceptance on the bench");
    }

    /** Whether these words of the sheet are in sight. */
    static boolean inSight(String words) {
        int at = sheet().getText().indexOf(words);
        int y = at < 0 ? -1 : sheet().getLocationAtOffset(at).y;
        return y >= 0 && y < sheet().getClientArea().height;
    }

    /** What the list of proposals shows. */
    static List<String> proposals() {
        List<String> texts = new ArrayList<>();
        popups().flatMap(shell -> Screen.all(shell, Table.class).stream()).forEach(table -> Stream.of(table.getItems()).map(TableItem::getText).forEach(texts::add));
        return texts;
    }

    /** Selects a proposal, and waits until what it would write is shown beside the list. */
    static void selectProposal(int row) {
        Table list = popups().flatMap(shell -> Screen.all(shell, Table.class).stream()).findFirst().orElseThrow();
        Screen.select(list, row);
        Screen.waitFor("the text beside the list", () -> popups().anyMatch(shell -> shell != list.getShell()));
    }

    /** Closes the list of proposals, as another window in front would. */
    static void closeProposals() {
        // Closing the list closes what says more about it.
        popups().forEach(Shell::close);
        Screen.settle();
    }

    /** What stands in shells of its own over the window. */
    private static Stream<Shell> popups() {
        return Stream.of(Display.getCurrent().getShells()).filter(shell -> !shell.isDisposed() && shell != Screen.window().getShell() && shell.isVisible());
    }

    /** Closes all editors without saving. */
    static void closeAll() {
        Screen.page().closeAllEditors(false);
        Screen.settle();
    }
}
