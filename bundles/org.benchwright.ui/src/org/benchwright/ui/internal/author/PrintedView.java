package org.benchwright.ui.internal.author;

import java.nio.file.Path;

import org.benchwright.ui.internal.Message;
import org.eclipse.ui.part.Page;
import org.eclipse.ui.texteditor.ITextEditor;

/** The procedure that is being written, as the technician will read it. */
public final class PrintedView extends EditorPagesView {

    @Override
    String nothing() {
        return Message.PRINTED_NOTHING_OPEN.text();
    }

    @Override
    Page page(ITextEditor editor, Path file) {
        return new PrintedPage(editor, file);
    }
}
