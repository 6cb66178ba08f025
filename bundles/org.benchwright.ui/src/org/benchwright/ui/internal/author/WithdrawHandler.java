package org.benchwright.ui.internal.author;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;

/** Has the revision that is selected in Revisions withdrawn. */
public final class WithdrawHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        RevisionsView.shown(event).withdraw();
        return null;
    }
}
