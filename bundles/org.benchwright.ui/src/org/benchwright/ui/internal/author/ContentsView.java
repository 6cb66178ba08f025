package org.benchwright.ui.internal.author;

import java.nio.file.Path;

import org.benchwright.ui.internal.Message;
import org.eclipse.ui.part.Page;
import org.eclipse.ui.texteditor.ITextEditor;

/** The contents of the text that is being written: its stages, steps and what they use. */
public final class ContentsView extends EditorPagesView {

    @Override
    String nothing() {
        return Message.CONTENTS_NONE.text();
    }

    @Override
    Page page(ITextEditor editor, Path file) {
        return new ContentsPage(editor, file);
    }
}
