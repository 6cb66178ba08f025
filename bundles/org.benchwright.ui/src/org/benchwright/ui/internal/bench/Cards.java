package org.benchwright.ui.internal.bench;

import org.benchwright.ui.Ids;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.handlers.HandlerUtil;

/** Finds the step card. */
final class Cards {

    private Cards() {
    }

    /** The window that a command was given in; this product has only one. */
    static IWorkbenchWindow window(ExecutionEvent event) {
        IWorkbenchWindow active = HandlerUtil.getActiveWorkbenchWindow(event);
        return active == null ? PlatformUI.getWorkbench().getWorkbenchWindows()[0] : active;
    }

    /** The step card, brought to the front from wherever the window is. */
    static CardView shown(IWorkbenchWindow window) {
        try {
            IWorkbenchPage page = window.getWorkbench().showPerspective(Ids.BENCH, window);
            return (CardView) page.showView(Ids.CARD_VIEW);
        } catch (WorkbenchException e) {
            throw new IllegalStateException("the step card can't be shown", e);
        }
    }
}
