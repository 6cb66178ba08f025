package org.benchwright.ui.internal.desk;

import java.time.Duration;
import java.util.function.LongSupplier;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Shell;

/** For how long nobody has done anything in the window: no key, no button of the mouse, no other unit, view or answer. */
public final class StillWindow {

    private static final int[] DEEDS = {SWT.KeyDown, SWT.MouseDown, SWT.Activate, SWT.FocusIn};

    private final LongSupplier nanos;
    private volatile long touched;
    private volatile long acted;

    public StillWindow() {
        this(System::nanoTime);
    }

    /** @param nanos a clock as {@link System#nanoTime} */
    public StillWindow(LongSupplier nanos) {
        this.nanos = nanos;
        this.touched = nanos.getAsLong();
        this.acted = touched;
    }

    /** Watches as long as the window is open. */
    public void watch(Shell window, Desk desk) {
        Listener deeds = event -> act();
        Listener moves = event -> touched = nanos.getAsLong();
        DeskListener changes = (change, test) -> {
            if (change != DeskListener.Change.UNITS) {
                act();
            }
        };
        Display display = window.getDisplay();
        for (int kind : DEEDS) {
            display.addFilter(kind, deeds);
        }
        display.addFilter(SWT.MouseMove, moves);
        desk.add(changes);
        window.addDisposeListener(event -> {
            for (int kind : DEEDS) {
                display.removeFilter(kind, deeds);
            }
            display.removeFilter(SWT.MouseMove, moves);
            desk.remove(changes);
        });
    }

    /** Somebody does something. */
    public void act() {
        acted = nanos.getAsLong();
        touched = acted;
    }

    /** True if nobody has done anything for that long, nor moved the mouse. Asked from any thread. */
    public boolean since(Duration time) {
        return nanos.getAsLong() - touched >= time.toNanos();
    }

    /** True if somebody did something within that time, for which the window has to show something else. Asked from any thread. */
    public boolean actedWithin(Duration time) {
        return nanos.getAsLong() - acted < time.toNanos();
    }
}
