package org.benchwright.emptywindow.tests;

import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Nothing at all. */
public final class EmptyPerspective implements IPerspectiveFactory {

    static final String ID = "org.benchwright.emptywindow.tests.empty";

    @Override
    public void createInitialLayout(IPageLayout layout) {
        layout.setEditorAreaVisible(false);
    }
}
