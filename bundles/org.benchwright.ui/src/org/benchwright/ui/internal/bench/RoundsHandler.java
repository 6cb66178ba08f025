package org.benchwright.ui.internal.bench;

import org.benchwright.ui.Ids;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.WorkbenchException;

/** Shows the units that a round comes to. */
public final class RoundsHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        try {
            IWorkbenchWindow window = Cards.window(event);
            window.getWorkbench().showPerspective(Ids.BENCH, window);
            return window.getActivePage().showView(Ids.ROUNDS_VIEW, null, IWorkbenchPage.VIEW_ACTIVATE);
        } catch (WorkbenchException e) {
            throw new ExecutionException(String.valueOf(e.getMessage()), e);
        }
    }
}
