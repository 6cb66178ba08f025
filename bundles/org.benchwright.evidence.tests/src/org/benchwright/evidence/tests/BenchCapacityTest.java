package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Random;

import org.benchwright.evidence.BenchCapacity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How many units a bench can take, by formulas and acted out. */
class BenchCapacityTest {

    /** Erlang's loss formula: by hand for few, tabulated loads for 1 % lost (from memory). */
    @ParameterizedTest
    @CsvSource({ "1, 1, 0.5, 1e-12", "2, 1, 0.2, 1e-12", "3, 1, 0.0625, 1e-12", "5, 1.361, 0.01, 1e-5", "10, 4.461, 0.01, 1e-5",
        "20, 12.03, 0.01, 3e-5", "50, 37.90, 0.01, 1e-5" })
    void lossFormulaOfErlang(int stations, double load, double lost, double tolerance) {
        assertEquals(lost, new BenchCapacity(stations, load).turnedAway(), tolerance);
    }

    /** One station, fixed soak: wait = load/(2(1 - load)) soaks (Pollaczek and Khinchine), by hand. */
    @ParameterizedTest
    @CsvSource({ "0.1, 0.0555555556", "0.5, 0.5", "0.8, 2", "0.9, 4.5", "0.95, 9.5" })
    void waitForOneStation(double load, double wait) {
        assertEquals(wait, new BenchCapacity(1, load).meanWait(), 1e-6 * wait);
    }

    /** The formula against a bench acted out: 400,000 arrivals in 40 batches, within four standard errors. */
    @ParameterizedTest
    @CsvSource({ "3, 2.4", "8, 6.5", "12, 11" })
    void formulaAndSimulationAgree(int stations, double load) {
        Random random = new Random(71);
        PriorityQueue<Double> free = new PriorityQueue<>(Collections.nCopies(stations, 0.0));
        List<Double> batches = new ArrayList<>();
        double now = 0;
        for (int batch = 0; batch < 40; batch++) {
            double waited = 0;
            for (int i = 0; i < 10_000; i++) {
                now += -Math.log(1 - random.nextDouble()) / load;
                double start = Math.max(now, free.remove());
                waited += start - now;
                free.add(start + 1);
            }
            batches.add(waited / 10_000);
        }
        agree(new BenchCapacity(stations, load).meanWait(), batches);
    }

    /** Turned away at once when all stations are taken: holds for a fixed soak too. */
    @Test
    void lossFormulaAndSimulationAgree() {
        Random random = new Random(72);
        PriorityQueue<Double> taken = new PriorityQueue<>();
        List<Double> batches = new ArrayList<>();
        double now = 0;
        for (int batch = 0; batch < 40; batch++) {
            int lost = 0;
            for (int i = 0; i < 10_000; i++) {
                now += -Math.log(1 - random.nextDouble()) / 6;
                while (!taken.isEmpty() && taken.peek() <= now) {
                    taken.remove();
                }
                if (taken.size() == 8) {
                    lost++;
                } else {
                    taken.add(now + 1);
                }
            }
            batches.add(lost / 10_000.0);
        }
        agree(new BenchCapacity(8, 6).turnedAway(), batches);
    }

    private static void agree(double formula, List<Double> batches) {
        double mean = batches.stream().mapToDouble(each -> each).average().orElseThrow();
        double squares = batches.stream().mapToDouble(each -> (each - mean) * (each - mean)).sum();
        double error = Math.sqrt(squares / (batches.size() - 1) / batches.size());
        assertEquals(formula, mean, 4 * error);
        assertTrue(error < 0.1 * formula, "the simulation is sharp enough to contradict");
    }

    @Test
    void whatABenchCanTake() {
        BenchCapacity bench = BenchCapacity.of(8, 72, 1 / 12.0);
        assertEquals(6, bench.load(), 1e-12);
        assertEquals(0.75, bench.busy(), 1e-12);
        assertEquals(1 / 9.0, bench.most(72), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new BenchCapacity(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new BenchCapacity(1, 0));
        assertThrows(IllegalArgumentException.class, () -> new BenchCapacity(8, 8).meanWait());
        assertThrows(IllegalArgumentException.class, () -> BenchCapacity.of(1, 0, 1));
    }
}
