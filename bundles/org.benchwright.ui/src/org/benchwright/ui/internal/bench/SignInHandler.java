package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.IWorkbenchWindow;

/** Lets somebody sign in at this station. */
public final class SignInHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        IWorkbenchWindow window = Cards.window(event);
        new SignInDialog(window.getShell(), window.getService(Desk.class), window.getService(Settings.class).technician()).open();
        return null;
    }
}
