package org.benchwright.ui.internal.app;

import org.benchwright.ui.Ids;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** The start page and nothing else. */
public final class StartPerspective implements IPerspectiveFactory {

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
        layout.addStandaloneView(Ids.WELCOME_VIEW, false, IPageLayout.TOP, 1.0f, layout.getEditorArea());
    }
}
