package org.benchwright.ui.internal.author;

import java.util.Optional;

import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.reconciler.IReconciler;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.source.projection.ProjectionViewer;

/**
 * Offers what the grammar puts between braces for folding, and comments. The reconciler that looks at the text finds it out; nothing is done twice.
 */
public final class AuthorFolding implements IReconciler {

    private Optional<FoldMarks> marks = Optional.empty();

    @Override
    public void install(ITextViewer viewer) {
        if (viewer instanceof ProjectionViewer projection) {
            marks = Optional.of(new FoldMarks(projection));
            Authoring.current().ifPresent(authoring -> marks.ifPresent(authoring::add));
        }
    }

    @Override
    public void uninstall() {
        Authoring.current().ifPresent(authoring -> marks.ifPresent(authoring::remove));
        marks = Optional.empty();
    }

    /** None of its own, for any kind of text. */
    @Override
    public IReconcilingStrategy getReconcilingStrategy(String contentType) {
        return null;
    }
}
