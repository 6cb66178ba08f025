package org.benchwright.ui.internal.author;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CancellationException;

import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IDocumentExtension4;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.reconciler.DirtyRegion;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.reconciler.IReconcilingStrategyExtension;

/** Has the language look at a document, and gives up as soon as it has changed again. */
final class AuthorStrategy implements IReconcilingStrategy, IReconcilingStrategyExtension {

    private IDocument document;
    private Path opened;
    private volatile boolean over;

    @Override
    public synchronized void setDocument(IDocument next) {
        document = next;
    }

    @Override
    public void setProgressMonitor(IProgressMonitor monitor) {
        // The document's own stamp tells when to give up.
    }

    @Override
    public void initialReconcile() {
        look();
    }

    @Override
    public void reconcile(DirtyRegion region, IRegion part) {
        look();
    }

    @Override
    public void reconcile(IRegion whole) {
        look();
    }

    private void look() {
        IDocument text = current();
        Optional<Path> file = Documents.path(text);
        Optional<Authoring> authoring = Authoring.current();
        if (file.isEmpty() || authoring.isEmpty() || over) {
            return;
        }
        AuthorFolder folder = authoring.get().folderOf(file.get());
        open(folder, file.get());
        try {
            long stamp = stamp(text);
            folder.analyse(file.get(), Documents.text(text), () -> over || stamp(text) != stamp);
        } catch (CancellationException changed) {
            // The change that stopped it makes this be called again.
        } catch (RuntimeException mistake) {
            // It would end the thread, and with it all remarks of this editor.
            ILog.of(AuthorStrategy.class).error(String.valueOf(mistake.getMessage()), mistake);
        }
    }

    private synchronized IDocument current() {
        return document;
    }

    private synchronized void open(AuthorFolder folder, Path file) {
        if (!file.equals(opened) && !over) {
            closeOpened();
            opened = file;
            folder.opened(file);
        }
    }

    /** The editor is closed, or shows another document. */
    synchronized void close() {
        over = true;
        closeOpened();
    }

    private void closeOpened() {
        if (opened != null) {
            Path file = opened;
            Authoring.current().ifPresent(authoring -> authoring.folderOf(file).closed(file));
            opened = null;
        }
    }

    private static long stamp(IDocument document) {
        return document instanceof IDocumentExtension4 stamped ? stamped.getModificationStamp() : 0;
    }
}
