package org.benchwright.ui.internal.bench;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** The step card as large as may be, the units in the house behind it; units on the bench and timeline beside it. */
public final class BenchPerspective implements IPerspectiveFactory {

    private static final String LARGE = "org.benchwright.ui.bench.large";

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
        IFolderLayout large = layout.createFolder(LARGE, IPageLayout.LEFT, 0.76f, layout.getEditorArea());
        large.addView(Ids.CARD_VIEW);
        large.addView(Ids.RECEIVED_VIEW);
        large.addView(Ids.INSTRUMENTS_VIEW);
        large.addPlaceholder(Ids.ROUNDS_VIEW);
        layout.addView(Ids.UNITS_VIEW, IPageLayout.RIGHT, 0.76f, LARGE);
        layout.addView(Ids.SO_FAR_VIEW, IPageLayout.BOTTOM, 0.4f, Ids.UNITS_VIEW);
        layout.addPlaceholder(Ids.PAGE_VIEW, IPageLayout.BOTTOM, 0.3f, Ids.SO_FAR_VIEW);
        layout.addShowViewShortcut(Ids.ROUNDS_VIEW);
        for (String view : new String[] {Ids.CARD_VIEW, Ids.RECEIVED_VIEW, Ids.INSTRUMENTS_VIEW, Ids.UNITS_VIEW, Ids.SO_FAR_VIEW}) {
            layout.getViewLayout(view).setCloseable(false);
        }
    }
}
