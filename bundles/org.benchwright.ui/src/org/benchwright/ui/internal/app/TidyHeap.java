package org.benchwright.ui.internal.app;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.Duration;
import java.util.Optional;

import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.swt.widgets.Shell;

/**
 * Collects the whole heap while nobody does anything. With fifty tests in the window that stops everything for longer than the eye forgives; if it
 * is done in time, the runtime need not do it while somebody waits for a card.
 */
final class TidyHeap {

    private static final int TICK_MILLIS = 5_000;
    private static final Duration STILL = Duration.ofSeconds(15);
    /** So much has become old since it was collected: less is not worth the while. */
    private static final long GROWN_BYTES = 8L << 20;
    /** The collector that the window is started with calls its old generation so. Under another one nothing is done: those know better. */
    private static final String OLD = "Tenured Gen";

    private final Shell window;
    private final StillWindow still;
    private final MemoryPoolMXBean old;

    private TidyHeap(Shell window, StillWindow still, MemoryPoolMXBean old) {
        this.window = window;
        this.still = still;
        this.old = old;
    }

    /** Does so as long as the window is open. */
    static void begin(Shell window, StillWindow still) {
        old().ifPresent(pool -> new TidyHeap(window, still, pool).later());
    }

    private static Optional<MemoryPoolMXBean> old() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP && pool.getName().equals(OLD)).findFirst();
    }

    private void later() {
        window.getDisplay().timerExec(TICK_MILLIS, this::look);
    }

    private void look() {
        if (window.isDisposed()) {
            return;
        }
        if (still.since(STILL) && old.getUsage().getUsed() - old.getCollectionUsage().getUsed() >= GROWN_BYTES) {
            System.gc();
        }
        later();
    }
}
