package org.benchwright.ui.internal;

import org.eclipse.core.runtime.ILog;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;

/** Brings views of this window to the front. */
public final class Views {

    private Views() {
    }

    /** Shows a view over whatever lies there; whoever works elsewhere goes on working there. */
    public static void uncover(IWorkbenchPage page, String view) {
        show(page, view, IWorkbenchPage.VIEW_VISIBLE);
    }

    /** Goes to a view. */
    public static void activate(IWorkbenchPage page, String view) {
        show(page, view, IWorkbenchPage.VIEW_ACTIVATE);
    }

    private static void show(IWorkbenchPage page, String view, int mode) {
        try {
            page.showView(view, null, mode);
        } catch (PartInitException e) {
            ILog.of(Views.class).log(e.getStatus());
        }
    }
}
