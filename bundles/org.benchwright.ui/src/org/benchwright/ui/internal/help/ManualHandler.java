package org.benchwright.ui.internal.help;

import org.benchwright.present.HelpPage;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.ui.handlers.HandlerUtil;

/** Shows what the manual holds. */
public final class ManualHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        PageView.show(HandlerUtil.getActiveWorkbenchWindowChecked(event).getActivePage(), HelpPage.README);
        return null;
    }
}
