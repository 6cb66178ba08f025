package org.benchwright.ui.internal.bench;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Asks on the step card for a note. */
public final class NoteHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Cards.shown(Cards.window(event)).note();
        return null;
    }
}
