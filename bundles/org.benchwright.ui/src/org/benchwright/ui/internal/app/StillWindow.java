package org.benchwright.ui.internal.app;

import java.time.Duration;

import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Shell;

/** For how long nobody has done anything in the window: no key, no button of the mouse, no other unit, view or answer. */
final class StillWindow {

    private static final int[] HANDS = {SWT.KeyDown, SWT.MouseDown, SWT.MouseMove, SWT.Activate, SWT.FocusIn};

    private volatile long touched = System.nanoTime();

    private StillWindow() {
    }

    /** Watches as long as the window is open. Asked from any thread. */
    static StillWindow watched(Shell window, Desk desk) {
        StillWindow still = new StillWindow();
        Listener hands = event -> still.touch();
        DeskListener changes = (change, test) -> {
            if (change != DeskListener.Change.UNITS) {
                still.touch();
            }
        };
        Display display = window.getDisplay();
        for (int kind : HANDS) {
            display.addFilter(kind, hands);
        }
        desk.add(changes);
        window.addDisposeListener(event -> {
            for (int kind : HANDS) {
                display.removeFilter(kind, hands);
            }
            desk.remove(changes);
        });
        return still;
    }

    private void touch() {
        touched = System.nanoTime();
    }

    /** True if nobody has done anything for that long. */
    boolean since(Duration time) {
        return System.nanoTime() - touched >= time.toNanos();
    }
}
