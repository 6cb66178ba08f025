package org.benchwright.ui.internal.audit;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Records and what waits for a decision to the left, the record sheet, the figures and the people beside them, the ledger check below. */
public final class AuditPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
        String lists = Ids.AUDIT + ".lists";
        IFolderLayout listing = layout.createFolder(lists, IPageLayout.LEFT, 0.5f, layout.getEditorArea());
        listing.addView(Ids.RECORDS_VIEW);
        listing.addView(Ids.DEPARTURES_VIEW);
        listing.addView(Ids.NONCONFORMITIES_VIEW);
        IFolderLayout reading = layout.createFolder(Ids.AUDIT + ".reading", IPageLayout.RIGHT, 0.5f, lists);
        reading.addView(Ids.SHEET_VIEW);
        reading.addView(Ids.FIGURES_VIEW);
        reading.addView(Ids.PEOPLE_VIEW);
        layout.addView(Ids.CHECK_VIEW, IPageLayout.BOTTOM, 0.65f, lists);
        layout.addPlaceholder(Ids.PAGE_VIEW, IPageLayout.BOTTOM, 0.5f, Ids.AUDIT + ".reading");
        for (String view : new String[] {Ids.RECORDS_VIEW, Ids.DEPARTURES_VIEW, Ids.NONCONFORMITIES_VIEW, Ids.SHEET_VIEW, Ids.CHECK_VIEW,
                Ids.FIGURES_VIEW, Ids.PEOPLE_VIEW}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }
}
