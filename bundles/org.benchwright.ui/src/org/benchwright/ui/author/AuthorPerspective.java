package org.benchwright.ui.author;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/**
 * Procedures to the left, the editor beside them. No view of remarks as long as nothing fills it: an empty one would say that a text is
 * sound.
 */
public final class AuthorPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(true);
        String editors = layout.getEditorArea();
        layout.addView(Ids.PROCEDURES_VIEW, IPageLayout.LEFT, 0.2f, editors);
    }
}
