package org.benchwright.ui.internal.bench;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** The step card as large as may be; units and timeline beside it. */
public final class BenchPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
        layout.addView(Ids.CARD_VIEW, IPageLayout.LEFT, 0.76f, layout.getEditorArea());
        layout.addView(Ids.UNITS_VIEW, IPageLayout.RIGHT, 0.76f, Ids.CARD_VIEW);
        layout.addView(Ids.SO_FAR_VIEW, IPageLayout.BOTTOM, 0.4f, Ids.UNITS_VIEW);
        for (String view : new String[] {Ids.CARD_VIEW, Ids.UNITS_VIEW, Ids.SO_FAR_VIEW}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }
}
