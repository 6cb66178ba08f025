package org.benchwright.ui.internal.audit;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Records to the left, the record sheet and the figures beside them, the ledger check below. */
public final class AuditPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
        layout.addView(Ids.RECORDS_VIEW, IPageLayout.LEFT, 0.5f, layout.getEditorArea());
        IFolderLayout reading = layout.createFolder(Ids.AUDIT + ".reading", IPageLayout.RIGHT, 0.5f, Ids.RECORDS_VIEW);
        reading.addView(Ids.SHEET_VIEW);
        reading.addView(Ids.FIGURES_VIEW);
        layout.addView(Ids.CHECK_VIEW, IPageLayout.BOTTOM, 0.65f, Ids.RECORDS_VIEW);
        for (String view : new String[] {Ids.RECORDS_VIEW, Ids.SHEET_VIEW, Ids.CHECK_VIEW, Ids.FIGURES_VIEW}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }
}
