package org.benchwright.ui.internal.bench;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Strikes the last entry of the selected test. */
public final class StrikeHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Cards.shown(Cards.window(event)).strike();
        return null;
    }
}
