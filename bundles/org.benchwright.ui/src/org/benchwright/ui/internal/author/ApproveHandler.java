package org.benchwright.ui.internal.author;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;

/** Has the revision of the procedure that is open approved, after showing what it changes. */
public final class ApproveHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        RevisionsView.shown(event).approve();
        return null;
    }
}
