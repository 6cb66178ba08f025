package org.benchwright.ui.internal.author;

import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.reconciler.MonoReconciler;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.viewers.Viewer;
import org.eclipse.swt.widgets.Composite;

/** Waits for a pause in typing, has the text looked at on a thread of its own, and shows the remarks in the editor. */
public final class AuthorReconciler extends MonoReconciler {

    /** What is pasted or replaced in one go is looked at once; a letter is looked at before the next can follow. */
    private static final int PAUSE_MILLIS = 10;

    private final AuthorStrategy strategy;
    private RemarkMarks marks;

    /** Made by the editor. */
    public AuthorReconciler() {
        this(new AuthorStrategy());
    }

    private AuthorReconciler(AuthorStrategy strategy) {
        super(strategy, false);
        this.strategy = strategy;
        setDelay(PAUSE_MILLIS);
    }

    @Override
    public void install(ITextViewer viewer) {
        super.install(viewer);
        if (viewer instanceof ISourceViewer source) {
            if (source instanceof Viewer control) {
                EditorMenu.tidy(source.getTextWidget(), (Composite) control.getControl());
            }
            marks = new RemarkMarks(source);
            Authoring.current().ifPresent(authoring -> authoring.add(marks));
        }
    }

    @Override
    public void uninstall() {
        super.uninstall();
        strategy.close();
        if (marks != null) {
            Authoring.current().ifPresent(authoring -> authoring.remove(marks));
        }
    }
}
