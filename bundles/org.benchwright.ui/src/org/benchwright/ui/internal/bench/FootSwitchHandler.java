package org.benchwright.ui.internal.bench;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.window.Window;

/** Asks which key the foot switch sends. */
public final class FootSwitchHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        InputDialog dialog = new InputDialog(Cards.window(event).getShell(), Words.FOOT_TITLE.text(), Words.FOOT_ASK.text(), FootSwitch.name(),
                typed -> typed.isBlank() || FootSwitch.takes(typed) ? null : Words.FOOT_REFUSED.text());
        if (dialog.open() == Window.OK) {
            FootSwitch.choose(dialog.getValue());
        }
        return null;
    }
}
