package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.IWorkbenchWindow;

/** Goes from unit to unit without leaving the keyboard: the next one on the bench comes onto the step card. */
public final class NextUnitHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        IWorkbenchWindow window = Cards.window(event);
        window.getService(Desk.class).selectNext();
        Cards.shown(window).setFocus();
        return null;
    }
}
