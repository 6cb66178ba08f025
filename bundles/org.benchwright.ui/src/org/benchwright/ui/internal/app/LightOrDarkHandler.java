package org.benchwright.ui.internal.app;

import org.benchwright.ui.internal.look.Theme;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.PlatformUI;

/** Changes between the light and the dark look. */
public final class LightOrDarkHandler extends AbstractHandler {

    @Override
    public Object execute(ExecutionEvent event) {
        Theme.change(PlatformUI.getWorkbench());
        return null;
    }
}
