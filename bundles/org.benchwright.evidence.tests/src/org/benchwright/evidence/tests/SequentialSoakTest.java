package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;

import org.benchwright.core.Verdict;
import org.benchwright.evidence.SequentialSoak;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SequentialSoakTest {

    private static final SequentialSoak PLAN = new SequentialSoak(200, 100, 0.10, 0.10);

    /** ln 2/(1/100 - 1/200) and ln 9/(1/100 - 1/200), by hand. */
    @Test
    void boundariesOfWald() {
        assertEquals(138.629436112, PLAN.timePerStop(), 1e-9);
        assertEquals(439.444915467, PLAN.acceptAfter(), 1e-9);
        assertEquals(439.444915467, PLAN.rejectBehind(), 1e-9);
        assertEquals(Optional.empty(), PLAN.decide(0, 0));
        assertEquals(Optional.of(Verdict.ACCEPTED), PLAN.decide(440, 0));
        assertEquals(Optional.empty(), PLAN.decide(440, 1));
        assertEquals(Optional.of(Verdict.ACCEPTED), PLAN.decide(579, 1));
        assertEquals(Optional.of(Verdict.REJECTED), PLAN.decide(100, 4));
        assertEquals(Optional.empty(), PLAN.decide(120, 4));
    }

    /** Wald's own bounds: the true risks obey a/(1 - b) <= alpha/(1 - beta) and b/(1 - a) <= beta/(1 - alpha). */
    @Test
    void trueRisksStayWithinWaldsBounds() {
        double producer = 1 - PLAN.acceptance(200);
        double consumer = PLAN.acceptance(100);
        assertTrue(producer / (1 - consumer) <= 0.1 / 0.9);
        // acceptance is reached without overshoot, so that this bound is met exactly
        assertEquals(0.1 / 0.9, consumer / (1 - producer), 1e-6);
    }

    /** The second algorithm: the closed form of Dvoretzky, Kiefer and Wolfowitz 1953. */
    @ParameterizedTest
    @ValueSource(doubles = { 80, 100, 150, 200, 400, 1000 })
    void acceptanceAgreesWithTheClosedForm(double meanTime) {
        double drop = PLAN.timePerStop() / meanTime;
        double below = PLAN.rejectBehind() / meanTime;
        double above = PLAN.acceptAfter() / meanTime;
        assertEquals(closedForm(below, drop) / closedForm(below + above, drop), PLAN.acceptance(meanTime), 1e-6);
    }

    private static double closedForm(double x, double drop) {
        double sum = 0;
        double factorial = 1;
        for (int j = 0; j * drop <= x; j++) {
            factorial *= Math.max(1, j);
            sum += Math.pow(j * drop - x, j) / factorial * Math.exp(x - j * drop);
        }
        return sum;
    }

    /** And by chance: 40,000 soaks, within four standard errors. */
    @ParameterizedTest
    @ValueSource(doubles = { 100, 140, 200 })
    void acceptanceAndTimeAgreeWithSimulation(double meanTime) {
        Random random = new Random(20260);
        int runs = 40_000;
        int accepted = 0;
        double sum = 0;
        double squares = 0;
        for (int run = 0; run < runs; run++) {
            double ahead = 0;
            double total = 0;
            while (true) {
                double next = -meanTime * Math.log(1 - random.nextDouble());
                if (ahead + next >= PLAN.acceptAfter()) {
                    total += PLAN.acceptAfter() - ahead;
                    accepted++;
                    break;
                }
                total += next;
                ahead += next - PLAN.timePerStop();
                if (ahead <= -PLAN.rejectBehind()) {
                    break;
                }
            }
            sum += total;
            squares += total * total;
        }
        double expected = PLAN.acceptance(meanTime);
        assertEquals(expected, (double) accepted / runs, 4 * Math.sqrt(expected * (1 - expected) / runs));
        double mean = sum / runs;
        assertEquals(PLAN.expectedTime(meanTime), mean, 4 * Math.sqrt((squares / runs - mean * mean) / runs));
    }

    @Test
    void betterUnitsAreAcceptedMoreOften() {
        double before = 0;
        for (double meanTime = 50; meanTime < 2000; meanTime *= 1.2) {
            double now = PLAN.acceptance(meanTime);
            assertTrue(now >= before && now <= 1);
            before = now;
        }
        // without stops it takes just the time to acceptance
        assertEquals(PLAN.acceptAfter(), PLAN.expectedTime(1e9), 1e-3);
    }

    @Test
    void refusesNonsense() {
        assertThrows(IllegalArgumentException.class, () -> new SequentialSoak(100, 100, 0.1, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new SequentialSoak(200, 0, 0.1, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new SequentialSoak(200, 100, 0, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new SequentialSoak(200, 100, 0.5, 0.5));
        assertThrows(IllegalArgumentException.class, () -> PLAN.decide(-1, 0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.decide(1, -1));
        assertThrows(IllegalArgumentException.class, () -> PLAN.acceptance(0));
        assertThrows(IllegalArgumentException.class, () -> PLAN.expectedTime(1));
    }
}
