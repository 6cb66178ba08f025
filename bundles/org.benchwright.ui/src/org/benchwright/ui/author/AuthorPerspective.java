package org.benchwright.ui.author;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/**
 * Procedures and the contents of one to the left, the editor beside them, how it will read, what it proves and its revisions to the right, remarks
 * and the fault codes of the bench below, and room for what one means.
 */
public final class AuthorPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(true);
        String editors = layout.getEditorArea();
        layout.addView(Ids.PROCEDURES_VIEW, IPageLayout.LEFT, 0.22f, editors);
        layout.addView(Ids.CONTENTS_VIEW, IPageLayout.BOTTOM, 0.3f, Ids.PROCEDURES_VIEW);
        IFolderLayout reading = layout.createFolder("org.benchwright.ui.reading", IPageLayout.RIGHT, 0.56f, editors);
        reading.addView(Ids.PRINTED_VIEW);
        reading.addView(Ids.PROOF_VIEW);
        reading.addView(Ids.REVISIONS_VIEW);
        IFolderLayout below = layout.createFolder("org.benchwright.ui.below", IPageLayout.BOTTOM, 0.75f, editors);
        below.addView(Ids.REMARKS_VIEW);
        below.addView(Ids.FAULT_CODES_VIEW);
        layout.addPlaceholder(Ids.PAGE_VIEW, IPageLayout.BOTTOM, 0.45f, "org.benchwright.ui.reading");
    }
}
