package org.benchwright.ui.author;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Procedures to the left, the editor in the middle, contents to the right, remarks below. */
public final class AuthorPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(true);
        String editors = layout.getEditorArea();
        layout.addView(Ids.PROCEDURES_VIEW, IPageLayout.LEFT, 0.2f, editors);
        layout.addView(IPageLayout.ID_OUTLINE, IPageLayout.RIGHT, 0.75f, editors);
        layout.addView(IPageLayout.ID_PROBLEM_VIEW, IPageLayout.BOTTOM, 0.75f, editors);
    }
}
