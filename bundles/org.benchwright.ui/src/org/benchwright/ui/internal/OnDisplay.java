package org.benchwright.ui.internal;

import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Widget;
import org.eclipse.ui.PlatformUI;

/** What was found out on another thread is shown on the display's, if it is still wanted there. */
public final class OnDisplay {

    private OnDisplay() {
    }

    /**
     * Runs something on the display's thread, unless the widget, or the whole window, is gone by then.
     *
     * @param widget what it is about; may be gone already
     * @param work   what to do
     */
    public static void later(Widget widget, Runnable work) {
        if (!PlatformUI.isWorkbenchRunning()) {
            return;
        }
        Display display = PlatformUI.getWorkbench().getDisplay();
        if (!display.isDisposed()) {
            display.asyncExec(() -> {
                if (widget != null && !widget.isDisposed()) {
                    work.run();
                }
            });
        }
    }
}
