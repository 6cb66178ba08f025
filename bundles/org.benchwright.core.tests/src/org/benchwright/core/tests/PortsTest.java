package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Pause;
import org.benchwright.core.Ticker;
import org.junit.jupiter.api.Test;

/** What the programs get time and patience from. */
class PortsTest {

    @Test
    void theMachinesOwnPortsDoWhatTheySay() throws InterruptedException {
        var ticker = Ticker.system();
        Duration before = ticker.elapsed();
        Pause.system().pause(Duration.ofMillis(20));
        Pause.system().pause(Duration.ofMillis(-20));
        assertTrue(ticker.elapsed().minus(before).compareTo(Duration.ofMillis(20)) >= 0);
        assertFalse(Cancellation.never().requested());
    }
}
