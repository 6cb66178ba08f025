package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.benchwright.evidence.HandTiming;
import org.junit.jupiter.api.Test;

/** What is uncertain in times that hands, tones and watches take. */
class HandTimingTest {

    @Test
    void handsTonesAndWatches() {
        HandTiming.Hand hand = new HandTiming.Hand(0.25, 0.1);
        HandTiming.Given tone = new HandTiming.Given(0.1);
        HandTiming.Sampled watch = new HandTiming.Sampled(10);
        assertEquals(0.1 * Math.sqrt(2), new HandTiming(hand, hand).uncertainty().standard(), 1e-15);
        assertEquals(0, new HandTiming(hand, hand).correction());
        // a resolution of 1 gives 0.29, JCGM 100:2008, F.2.2.1
        assertEquals(0.29, new HandTiming(new HandTiming.Given(1), new HandTiming.Given(0)).uncertainty().standard(), 2e-3);
        assertEquals(Math.hypot(0.1, 0.1 / Math.sqrt(12)), new HandTiming(hand, tone).uncertainty().standard(), 1e-15);
        assertEquals(0.25, new HandTiming(hand, tone).correction());
        assertEquals(-5, new HandTiming(tone, watch).correction());
        assertEquals(4 * 0.1 * Math.sqrt(2), new HandTiming(hand, hand).shortestDeadline(), 1e-15);
        assertThrows(IllegalArgumentException.class, () -> new HandTiming.Hand(-1, 0));
        assertThrows(IllegalArgumentException.class, () -> new HandTiming.Given(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new HandTiming.Sampled(-1));
    }
}
