package org.benchwright.ui.internal.bench;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Asks on the step card why the unit is to be made safe. */
public final class MakeSafeHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Cards.shown(Cards.window(event)).makeSafe();
        return null;
    }
}
