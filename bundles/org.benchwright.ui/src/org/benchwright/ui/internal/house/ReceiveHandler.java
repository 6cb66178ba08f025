package org.benchwright.ui.internal.house;

import org.benchwright.ui.internal.app.Settings;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.handlers.HandlerUtil;

/** Receives units. */
public final class ReceiveHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) throws ExecutionException {
        IWorkbenchWindow window = HandlerUtil.getActiveWorkbenchWindowChecked(event);
        new ReceiveDialog(window.getShell(), window.getService(House.class), window.getService(Settings.class), "").open();
        return null;
    }
}
