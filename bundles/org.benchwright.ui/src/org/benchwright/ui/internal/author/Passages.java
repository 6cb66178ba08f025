package org.benchwright.ui.internal.author;

import org.benchwright.language.editing.Place;
import org.benchwright.ui.internal.app.Editors;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;

/** Opens a passage in its editor. */
final class Passages {

    private Passages() {
    }

    /** Shows a passage in the window that is in front. */
    static void show(Place place) {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
        IWorkbenchPage page = window == null ? null : window.getActivePage();
        if (page != null) {
            show(page, place);
        }
    }

    /** Shows a passage in a page's editor. */
    static void show(IWorkbenchPage page, Place place) {
        Editors.open(page, place.file());
        IEditorPart editor = page.getActiveEditor();
        ITextEditor text = editor == null ? null : editor.getAdapter(ITextEditor.class);
        if (text != null) {
            text.selectAndReveal(place.offset(), place.length());
        }
    }
}
