package org.benchwright.ui.internal.audit;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Records to the left, the record sheet beside them, the ledger check below. */
public final class AuditPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
        layout.addView(Ids.RECORDS_VIEW, IPageLayout.LEFT, 0.5f, layout.getEditorArea());
        layout.addView(Ids.SHEET_VIEW, IPageLayout.RIGHT, 0.5f, Ids.RECORDS_VIEW);
        layout.addView(Ids.CHECK_VIEW, IPageLayout.BOTTOM, 0.65f, Ids.RECORDS_VIEW);
        for (String view : new String[] {Ids.RECORDS_VIEW, Ids.SHEET_VIEW, Ids.CHECK_VIEW}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }
}
