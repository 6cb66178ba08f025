package org.benchwright.ui.internal.look;

import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PlatformUI;

/** The light and the dark look. */
public final class Theme {

    private static final String LIGHT = "org.benchwright.ui.light";
    private static final String DARK = "org.benchwright.ui.dark";

    private Theme() {
    }

    /** True while the dark look is on. */
    public static boolean dark(IWorkbench workbench) {
        IThemeEngine engine = workbench.getService(IThemeEngine.class);
        return engine != null && engine.getActiveTheme() != null && engine.getActiveTheme().getId().equals(DARK);
    }

    /** Changes from one look to the other; it stays so at the next start. */
    public static void change(IWorkbench workbench) {
        use(workbench, !dark(workbench));
    }

    /** Takes a look. */
    public static void use(IWorkbench workbench, boolean dark) {
        workbench.getService(IThemeEngine.class).setTheme(dark ? DARK : LIGHT, true);
        for (var shell : Display.getCurrent().getShells()) {
            shell.layout(true, true);
            shell.redraw(0, 0, shell.getSize().x, shell.getSize().y, true);
            corners(shell);
        }
    }

    /** The buttons in the corner of a folder of tabs stand on a picture of its ground, which is taken again when that is set. */
    private static void corners(Composite within) {
        for (var child : within.getChildren()) {
            if (child instanceof CTabFolder folder) {
                folder.setBackground(folder.getBackground());
            }
            if (child instanceof Composite composite) {
                corners(composite);
            }
        }
    }

    /** The colours of the look that is on. */
    public static Palette palette() {
        return PlatformUI.isWorkbenchRunning() && dark(PlatformUI.getWorkbench()) ? Palette.DARK : Palette.LIGHT;
    }
}
