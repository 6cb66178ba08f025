package org.benchwright.ui.internal.bench;

import java.util.List;

import org.benchwright.ui.internal.OnDisplay;
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
        Desk desk = window.getService(Desk.class);
        Settings settings = window.getService(Settings.class);
        InputDialog dialog = new InputDialog(window.getShell(), Words.ALL_SAFE_TITLE.text(), Words.ALL_SAFE_ASK.text(), "",
                typed -> typed.isBlank() ? "" : null);
        if (dialog.open() == Window.OK) {
            desk.makeAllSafe(dialog.getValue().strip(), desk.worksHere(settings.technician()), settings.station())
                    .thenAccept(failed -> OnDisplay.later(window.getShell(), () -> tell(window, failed)));
            Cards.shown(window).setFocus();
        }
        return null;
    }

    private static void tell(IWorkbenchWindow window, List<String> failed) {
        if (!failed.isEmpty()) {
            new Notice(window.getShell()).show(failed, Words.ALL_SAFE_FAILED.text(), true);
        }
    }
}
