package org.benchwright.ui.internal.bench;

import org.benchwright.present.StationSignIn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Shell;

/** Locks the station that nobody touches for a while, whatever the window shows. */
public final class IdleLock {

    private static final int TICK = 1000;

    private final Shell window;
    private final StationSignIn station;
    private final Runnable locked;

    private IdleLock(Shell window, StationSignIn station, Runnable locked) {
        this.window = window;
        this.station = station;
        this.locked = locked;
    }

    /**
     * Watches as long as the window is open.
     *
     * @param locked is told, on the display's thread, when the station has locked itself
     */
    public static void begin(Shell window, StationSignIn station, Runnable locked) {
        Display display = window.getDisplay();
        Listener hands = event -> station.touched();
        display.addFilter(SWT.KeyDown, hands);
        display.addFilter(SWT.MouseDown, hands);
        window.addDisposeListener(event -> {
            display.removeFilter(SWT.KeyDown, hands);
            display.removeFilter(SWT.MouseDown, hands);
        });
        new IdleLock(window, station, locked).tick();
    }

    private void tick() {
        if (window.isDisposed()) {
            return;
        }
        // First the next one: whatever goes wrong with this one, the station goes on locking itself.
        window.getDisplay().timerExec(TICK, this::tick);
        if (station.lockIfIdle()) {
            locked.run();
        }
    }
}
