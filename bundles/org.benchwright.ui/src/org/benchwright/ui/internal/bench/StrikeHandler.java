package org.benchwright.ui.internal.bench;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.handlers.HandlerUtil;

/** Strikes the last entry of the selected test. */
public final class StrikeHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Cards.shown(HandlerUtil.getActiveWorkbenchWindow(event)).strike();
        return null;
    }
}
