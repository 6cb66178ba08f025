package org.benchwright.ui.internal.look;

import java.util.Optional;

import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.swt.widgets.Button;
import org.eclipse.ui.PlatformUI;

/** Buttons that can be pressed or not, and look like it: their colour is the style sheet's, which has to be asked again. */
public final class Switched {

    private Switched() {
    }

    /** Makes a button one that can be pressed, or one that can't. */
    public static void enable(Button button, boolean enabled) {
        if (button.isEnabled() != enabled) {
            button.setEnabled(enabled);
            Optional.ofNullable(PlatformUI.getWorkbench().getService(IThemeEngine.class)).ifPresent(engine -> engine.applyStyles(button, false));
        }
    }
}
