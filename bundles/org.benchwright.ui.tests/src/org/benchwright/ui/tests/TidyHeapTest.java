package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;

import org.benchwright.ui.internal.app.TidyHeap;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The heap is collected while nobody would notice, and only then. */
@ExtendWith(QuietLog.class)
class TidyHeapTest {

    private static final long MEBIBYTE = 1L << 20;

    /** A heap that counts how often it is collected. */
    private static final class CountedHeap implements TidyHeap.Old {

        private long grown;
        private int collected;

        @Override
        public long grown() {
            return grown;
        }

        @Override
        public void collect() {
            collected++;
            grown = 0;
        }
    }

    @ParameterizedTest
    @CsvSource({"14, 100, 0", "15, 100, 1", "15, 8, 1", "15, 7, 0", "600, 0, 0"})
    void itIsCollectedOnceNobodyHasDoneAnythingForAWhileAndItHasGrown(long stillSeconds, long grownMebibytes, int collected) {
        CountedHeap heap = new CountedHeap();
        heap.grown = grownMebibytes * MEBIBYTE;
        TidyHeap tidy = new TidyHeap(time -> Duration.ofSeconds(stillSeconds).compareTo(time) >= 0, heap);
        tidy.look();
        assertEquals(collected, heap.collected);
        tidy.look();
        assertEquals(collected, heap.collected, "not again before it has grown");
    }

    @ParameterizedTest
    @ValueSource(ints = {SWT.KeyDown, SWT.MouseDown, SWT.MouseMove, SWT.Activate, SWT.FocusIn})
    void whoeverTouchesTheWindowIsNoticed(int touch, @TempDir Path folder) {
        AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 5);
        Shell window = new Shell(Screen.window().getShell());
        try (Desk desk = new Desk(folder.resolve("bench.ledger"), "a test")) {
            StillWindow still = new StillWindow(nanos::get);
            still.watch(window, desk);
            nanos.addAndGet(Duration.ofSeconds(15).toNanos());
            assertTrue(still.since(Duration.ofSeconds(15)), "however the clock's number goes on");
            assertFalse(still.since(Duration.ofSeconds(16)));
            window.notifyListeners(touch, new Event());
            assertFalse(still.since(Duration.ofNanos(1)));
            window.dispose();
            nanos.addAndGet(1);
            Screen.window().getShell().notifyListeners(touch, new Event());
            assertTrue(still.since(Duration.ofNanos(1)), "a window that is closed is watched no more");
        } finally {
            window.dispose();
        }
    }

    /** The units are read every two seconds: that is nobody's doing. */
    @Test
    void goingToAnotherUnitIsNoticedAndReadingTheUnitsIsNot(@TempDir Path folder) {
        AtomicLong nanos = new AtomicLong();
        Shell window = new Shell(Screen.window().getShell());
        try (Desk desk = new Desk(folder.resolve("bench.ledger"), "a test")) {
            StillWindow still = new StillWindow(nanos::get);
            still.watch(window, desk);
            nanos.addAndGet(5);
            Screen.waitFor("the units are read", desk::looked);
            assertTrue(still.since(Duration.ofNanos(5)));
            desk.select("T-1");
            assertFalse(still.since(Duration.ofNanos(1)));
        } finally {
            window.dispose();
        }
    }
}
