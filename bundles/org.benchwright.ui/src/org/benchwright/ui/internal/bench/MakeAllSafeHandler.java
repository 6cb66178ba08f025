package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.ui.IWorkbenchWindow;

/** Begins to make every unit on the bench safe, once it is said why. */
public final class MakeAllSafeHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        IWorkbenchWindow window = Cards.window(event);
        Settings settings = window.getService(Settings.class);
        InputDialog dialog = new InputDialog(window.getShell(), Words.ALL_SAFE_TITLE.text(), Words.ALL_SAFE_ASK.text(), "",
                typed -> typed.isBlank() ? "" : null);
        if (dialog.open() == Window.OK) {
            window.getService(Desk.class).makeAllSafe(dialog.getValue().strip(), settings.technician(), settings.station());
            Cards.shown(window).setFocus();
        }
        return null;
    }
}
