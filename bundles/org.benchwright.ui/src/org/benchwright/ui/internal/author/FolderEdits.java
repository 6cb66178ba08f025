package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.benchwright.language.editing.Edit;
import org.benchwright.language.editing.FolderSession;
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
 * Edits in several files, each made as one change that can be undone. A file that was saved is saved again; one with changes that are not
 * saved stays so.
 *
 * @param edits in the texts as they were when the edits were found out
 * @param texts those texts, by file
 */
public record FolderEdits(List<Edit> edits, Map<Path, String> texts) {

    public FolderEdits {
        edits = List.copyOf(edits);
        texts = Map.copyOf(texts);
    }

    /** Edits that a session has found out a moment ago. Not for the display's thread. */
    public static FolderEdits of(FolderSession session, List<Edit> edits) {
        Map<Path, String> texts = new HashMap<>();
        edits.forEach(edit -> texts.computeIfAbsent(edit.place().file(), file -> session.text(file).orElse("")));
        return new FolderEdits(edits, texts);
    }

    /**
     * Makes them, unless somebody has typed meanwhile: then they would stand in the wrong places.
     *
     * @return false if a text has changed; then nothing is edited
     */
    public boolean make() throws CoreException, BadLocationException {
        Map<Path, List<Edit>> byFile = edits.stream()
                .collect(Collectors.groupingBy(edit -> edit.place().file(), TreeMap::new, Collectors.toList()));
        for (Path file : byFile.keySet()) {
            if (!text(file).equals(texts.get(file))) {
                return false;
            }
        }
        for (Map.Entry<Path, List<Edit>> file : byFile.entrySet()) {
            make(file.getKey(), file.getValue());
        }
        return true;
    }

    /** Something that is done with the text of a file, whether an editor shows it or not. */
    @FunctionalInterface
    private interface Work<T> {
        T on(ITextFileBuffer buffer) throws CoreException, BadLocationException;
    }

    private static String text(Path file) throws CoreException, BadLocationException {
        return with(file, buffer -> buffer.getDocument().get());
    }

    private static void make(Path file, List<Edit> edits) throws CoreException, BadLocationException {
        with(file, buffer -> {
            boolean saved = !buffer.isDirty();
            MultiTextEdit all = new MultiTextEdit();
            edits.forEach(edit -> all.addChild(new ReplaceEdit(edit.place().offset(), edit.place().length(), edit.text())));
            all.apply(buffer.getDocument());
            if (saved) {
                buffer.commit(new NullProgressMonitor(), true);
            }
            return saved;
        });
    }

    private static <T> T with(Path file, Work<T> work) throws CoreException, BadLocationException {
        ITextFileBufferManager buffers = FileBuffers.getTextFileBufferManager();
        IFileStore store = EFS.getLocalFileSystem().getStore(file.toUri());
        buffers.connectFileStore(store, new NullProgressMonitor());
        try {
            return work.on(buffers.getFileStoreTextFileBuffer(store));
        } finally {
            buffers.disconnectFileStore(store, new NullProgressMonitor());
        }
    }
}
