package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.window.Window;
import org.eclipse.ui.IWorkbenchWindow;

/** Opens a new test. */
public final class NewTestHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        open(Cards.window(event));
        return null;
    }

    /** Asks what to test, and shows the step card once the test is open. */
    public void open(IWorkbenchWindow window) {
        open(window, "");
    }

    /** As {@link #open(IWorkbenchWindow)}, with a unit that is known already. */
    public void open(IWorkbenchWindow window, String unit) {
        Desk desk = window.getService(Desk.class);
        Settings settings = window.getService(Settings.class);
        NewTestDialog dialog = new NewTestDialog(window.getShell(), desk, settings, unit);
        if (dialog.open() == Window.OK) {
            Cards.shown(window).setFocus();
        }
    }
}
