package org.benchwright.ui.internal.app;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Predicate;

import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.swt.widgets.Shell;

/**
 * Collects the whole heap while nobody does anything. With fifty tests in the window that stops everything for longer than the eye forgives; if it
 * is done in time, the runtime need not do it while somebody waits for a card.
 */
public final class TidyHeap {

    private static final int TICK_MILLIS = 5_000;
    private static final Duration STILL = Duration.ofSeconds(15);
    /** So much has become old since it was collected: less is not worth the while. */
    private static final long GROWN_BYTES = 8L << 20;
    /** The collector that the window is started with calls its old generation so. Under another one nothing is done: those know better. */
    private static final String OLD = "Tenured Gen";

    private final Predicate<Duration> still;
    private final Old old;

    /** What has become old on the heap. */
    public interface Old {

        /** By how many bytes it has grown since it was collected. */
        long grown();

        /** Collects it, with all the rest. */
        void collect();
    }

    /** @param still whether nobody has done anything for that long */
    public TidyHeap(Predicate<Duration> still, Old old) {
        this.still = still;
        this.old = old;
    }

    /** Does so as long as the window is open. */
    static void begin(Shell window, StillWindow still) {
        old().ifPresent(old -> new TidyHeap(still::since, old).later(window));
    }

    private static Optional<Old> old() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP && pool.getName().equals(OLD))
                .findFirst()
                .map(Tenured::new);
    }

    private void later(Shell window) {
        window.getDisplay().timerExec(TICK_MILLIS, () -> {
            if (!window.isDisposed()) {
                look();
                later(window);
            }
        });
    }

    /** Collects if it is worth the while and nobody would notice. */
    public void look() {
        if (still.test(STILL) && old.grown() >= GROWN_BYTES) {
            old.collect();
        }
    }

    /** The old generation of this runtime. */
    private record Tenured(MemoryPoolMXBean pool) implements Old {

        @Override
        public long grown() {
            return pool.getUsage().getUsed() - pool.getCollectionUsage().getUsed();
        }

        @Override
        public void collect() {
            System.gc();
        }
    }
}
