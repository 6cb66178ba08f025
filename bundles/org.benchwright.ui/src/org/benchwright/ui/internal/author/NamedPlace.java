package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.language.editing.FolderSession;
import org.benchwright.ui.internal.app.Editors;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;

/**
 * Where the caret is in the text that is being written.
 *
 * @param shell  the window
 * @param folder the folder of the text
 * @param file   its file
 * @param text   its characters
 * @param offset the caret
 */
record NamedPlace(Shell shell, AuthorFolder folder, Path file, String text, int offset) {

    /** The caret of the editor in front; empty where it is no family or procedure. */
    static Optional<NamedPlace> of(ExecutionEvent event) {
        IEditorPart editor = HandlerUtil.getActiveEditor(event);
        Optional<Path> file = Editors.file(editor);
        Optional<Authoring> authoring = Authoring.current();
        if (file.isEmpty() || authoring.isEmpty()
                || !(((ITextEditor) editor).getSelectionProvider().getSelection() instanceof ITextSelection selection)) {
            return Optional.empty();
        }
        IDocument document = ((ITextEditor) editor).getDocumentProvider().getDocument(editor.getEditorInput());
        return Optional.of(new NamedPlace(HandlerUtil.getActiveShell(event), authoring.get().folderOf(file.get()), file.get(),
                document.get(), selection.getOffset()));
    }

    /** The language's session, knowing this text. Not for the display's thread. */
    FolderSession session() {
        return folder.knowing(file, text);
    }
}
