package org.benchwright.ui.internal.bench;

import java.util.Map;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.commands.IElementUpdater;
import org.eclipse.ui.menus.UIElement;

/** Whether a look that is due or missed sounds: on or off. It is shown in either case. */
public final class LooksSoundHandler extends AbstractHandler implements IElementUpdater {

    private static final String COMMAND = "org.benchwright.ui.looksSound";

    @Override
    public Object execute(ExecutionEvent event) {
        Reminders.sound(!Reminders.sounds());
        PlatformUI.getWorkbench().getService(ICommandService.class).refreshElements(COMMAND, null);
        return null;
    }

    @Override
    @SuppressWarnings("rawtypes")
    public void updateElement(UIElement element, Map parameters) {
        element.setChecked(Reminders.sounds());
    }
}
