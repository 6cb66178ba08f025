package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.language.editing.Analysis;
import org.benchwright.ui.internal.app.ProcedureFiles;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ISynchronizable;

/** Which file a document is about, and its text. */
final class Documents {

    private Documents() {
    }

    /** The family or procedure that a document is about; empty where it is about something else. */
    static Optional<Path> path(IDocument document) {
        ITextFileBuffer buffer = document == null ? null : FileBuffers.getTextFileBufferManager().getTextFileBuffer(document);
        if (buffer == null) {
            return Optional.empty();
        }
        IPath location = buffer.getLocation();
        Optional<Path> stored = Optional.ofNullable(buffer.getFileStore()).map(store -> store.toURI())
                .filter(uri -> "file".equals(uri.getScheme())).map(Path::of);
        return stored.or(() -> Optional.ofNullable(location).map(IPath::toPath)).map(path -> path.toAbsolutePath().normalize())
                .filter(ProcedureFiles::isOne);
    }

    /** The document's characters at one instant, from any thread. */
    static String text(IDocument document) {
        Object lock = document instanceof ISynchronizable synchronizable ? synchronizable.getLockObject() : null;
        if (lock == null) {
            return document.get();
        }
        synchronized (lock) {
            return document.get();
        }
    }

    /** Whether an analysis is about exactly the text that a document has now. */
    static boolean isAbout(Analysis analysis, IDocument document) {
        return document != null && document.getLength() == analysis.text().length()
                && path(document).filter(analysis.file()::equals).isPresent() && document.get().equals(analysis.text());
    }
}
