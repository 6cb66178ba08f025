package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;

import org.benchwright.ui.internal.desk.GivingWay;
import org.benchwright.ui.internal.desk.StillWindow;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.Test;

/** Work behind the window lets go first who does something in it. Time stands still but for the naps and where a test says so. */
class GivingWayTest {

    private static final Duration PIECE_OF_WORK = Duration.ofMillis(20);

    private final AtomicLong nanos = new AtomicLong();
    private final StillWindow window = new StillWindow(nanos::get);
    private Runnable inEachNap = () -> { };
    private boolean stopped;
    private int naps;
    private final GivingWay giving = new GivingWay(window, () -> stopped, nanos::get, time -> {
        pass(time);
        naps++;
        inEachNap.run();
    });

    private void pass(Duration time) {
        nanos.addAndGet(time.toNanos());
    }

    private void work() {
        pass(PIECE_OF_WORK);
        assertFalse(giving.requested());
    }

    @Test
    void workGoesOnWhileNobodyDoesAnything() {
        pass(Duration.ofSeconds(1));
        work();
        work();
        assertEquals(0, naps);
    }

    @Test
    void itRestsWhileWhatSomebodyAskedForIsShown() {
        window.act();
        work();
        assertEquals(Duration.ofMillis(150), Duration.ofNanos(nanos.get()), "shown, and over");
        int rests = naps;
        work();
        assertEquals(rests, naps, "nobody has done more");
    }

    @Test
    void whoTypesOnAndOnDoesNotStopTheWork() {
        inEachNap = window::act;
        window.act();
        work();
        assertEquals(20, naps);
        assertFalse(giving.requested(), "a piece of work is done before the next rest");
        assertEquals(20, naps);
        work();
        assertEquals(40, naps);
    }

    @Test
    void itStopsInTheMidstOfARest() {
        inEachNap = () -> stopped = true;
        window.act();
        pass(PIECE_OF_WORK);
        assertTrue(giving.requested());
        assertEquals(1, naps);
    }

    @Test
    void aThreadThatShouldEndDoesNotRest() {
        GivingWay ending = new GivingWay(window, () -> stopped, nanos::get, time -> {
            naps++;
            throw new InterruptedException();
        });
        window.act();
        pass(PIECE_OF_WORK);
        assertFalse(ending.requested());
        assertEquals(1, naps);
        assertTrue(Thread.interrupted(), "the work hears of it");
    }

    @Test
    void aKeyIsADeedAndTheMouseOnlyATouch() {
        Shell shell = new Shell(Screen.window().getShell());
        try {
            window.watch(shell, Technician.desk());
            pass(Duration.ofMinutes(1));
            shell.notifyListeners(SWT.MouseMove, new Event());
            assertFalse(window.since(Duration.ofSeconds(30)));
            assertFalse(window.actedWithin(Duration.ofSeconds(30)));
            pass(Duration.ofMinutes(1));
            assertTrue(window.since(Duration.ofSeconds(30)));
            shell.notifyListeners(SWT.KeyDown, new Event());
            assertTrue(window.actedWithin(Duration.ofSeconds(30)));
            assertFalse(window.since(Duration.ofSeconds(30)));
        } finally {
            shell.dispose();
        }
    }
}
