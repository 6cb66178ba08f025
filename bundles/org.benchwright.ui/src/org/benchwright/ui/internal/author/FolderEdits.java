package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.benchwright.language.editing.Edit;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.ITextFileBufferManager;
import org.eclipse.core.filesystem.EFS;
import org.eclipse.core.filesystem.IFileStore;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.text.edits.MultiTextEdit;
import org.eclipse.text.edits.ReplaceEdit;

/**
 * Makes edits in several files, each as one change that can be undone. A file that was saved is saved again; one with changes that are not
 * saved stays so.
 */
final class FolderEdits {

    private FolderEdits() {
    }

    static void make(List<Edit> edits) throws CoreException, BadLocationException {
        Map<Path, List<Edit>> byFile = edits.stream()
                .collect(Collectors.groupingBy(edit -> edit.place().file(), TreeMap::new, Collectors.toList()));
        for (Map.Entry<Path, List<Edit>> file : byFile.entrySet()) {
            make(file.getKey(), file.getValue());
        }
    }

    private static void make(Path file, List<Edit> edits) throws CoreException, BadLocationException {
        ITextFileBufferManager buffers = FileBuffers.getTextFileBufferManager();
        IFileStore store = EFS.getLocalFileSystem().getStore(file.toUri());
        buffers.connectFileStore(store, new NullProgressMonitor());
        try {
            ITextFileBuffer buffer = buffers.getFileStoreTextFileBuffer(store);
            boolean saved = !buffer.isDirty();
            MultiTextEdit all = new MultiTextEdit();
            edits.forEach(edit -> all.addChild(new ReplaceEdit(edit.place().offset(), edit.place().length(), edit.text())));
            all.apply(buffer.getDocument());
            if (saved) {
                buffer.commit(new NullProgressMonitor(), true);
            }
        } finally {
            buffers.disconnectFileStore(store, new NullProgressMonitor());
        }
    }
}
