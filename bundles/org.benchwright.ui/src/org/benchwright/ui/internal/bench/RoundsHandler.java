package org.benchwright.ui.internal.bench;

import org.benchwright.ui.Ids;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;

/** Shows the units that a round comes to. */
public final class RoundsHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        try {
            return Cards.window(event).getActivePage().showView(Ids.ROUNDS_VIEW, null, IWorkbenchPage.VIEW_ACTIVATE);
        } catch (PartInitException e) {
            throw new ExecutionException(String.valueOf(e.getMessage()), e);
        }
    }
}
