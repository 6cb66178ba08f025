package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Random;
import java.util.Set;

import org.benchwright.evidence.BenchCapacity;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.FieldReturns;
import org.benchwright.evidence.HandTiming;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.RunRules;
import org.benchwright.evidence.SoakDay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchTest {

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

    /**
     * Mean number of points to a false alarm, Champ and Woodall 1987 (from memory): 370.40 with rule 1, 225.44 with 1 and
     * 2, 166.05 with 1 and 3, 152.73 with 1 and 4, 91.75 with all four. Simulated, so within four standard errors.
     */
    @ParameterizedTest
    @CsvSource({ "1000, 370.40", "1100, 225.44", "1010, 166.05", "1001, 152.73", "1111, 91.75" })
    void falseAlarmsOfRunRules(String which, double published) {
        Set<RunRules> rules = EnumSet.noneOf(RunRules.class);
        for (int i = 0; i < which.length(); i++) {
            if (which.charAt(i) == '1') {
                rules.add(RunRules.values()[i]);
            }
        }
        Random random = new Random(1987);
        int runs = 4000;
        double sum = 0;
        double squares = 0;
        for (int run = 0; run < runs; run++) {
            double length = lengthToAlarm(random, rules);
            sum += length;
            squares += length * length;
        }
        double mean = sum / runs;
        assertEquals(published, mean, 4 * Math.sqrt((squares / runs - mean * mean) / runs));
    }

    private static double lengthToAlarm(Random random, Set<RunRules> rules) {
        List<Double> points = new ArrayList<>();
        int before = 0;
        while (true) {
            for (int i = 0; i < 100; i++) {
                points.add(random.nextGaussian());
            }
            List<Double> window = points.subList(Math.max(0, points.size() - 110), points.size());
            List<RunRules.Signal> signals = RunRules.signals(new ControlChart(window, -3, 0, 3), rules);
            int offset = points.size() - window.size();
            int known = before;
            var first = signals.stream().mapToInt(signal -> offset + signal.place()).filter(place -> place >= known).min();
            if (first.isPresent()) {
                return first.getAsInt() + 1;
            }
            before = points.size();
        }
    }

    @Test
    void runsAreCompletedByTheirLastPoint() {
        assertEquals("[]", signals(RunRules.TWO_OF_THREE_BEYOND_TWO, 2.1, 0, 0, 2.1));
        assertEquals("[2]", signals(RunRules.TWO_OF_THREE_BEYOND_TWO, 2.1, 0, 2.1));
        assertEquals("[]", signals(RunRules.TWO_OF_THREE_BEYOND_TWO, 2.1, 0, -2.1));
        assertEquals("[4]", signals(RunRules.FOUR_OF_FIVE_BEYOND_ONE, -1.1, -1.1, 0, -1.1, -1.1));
        assertEquals("[7, 8]", signals(RunRules.EIGHT_ON_ONE_SIDE, .1, .1, .1, .1, .1, .1, .1, .1, .1));
        assertEquals("[5]", signals(RunRules.SIX_RISING_OR_FALLING, .6, .5, .4, .3, .2, .1, .1));
        assertEquals("[1]", signals(RunRules.ONE_BEYOND_THREE, 3, -3.01));
        assertEquals(List.of(), RunRules.signals(new ControlChart(List.of(1.0, 1.0), 1, 1, 1), RunRules.westernElectric()));
    }

    private static String signals(RunRules rule, double... points) {
        List<Double> list = Arrays.stream(points).boxed().toList();
        return RunRules.signals(new ControlChart(list, -3, 0, 3), EnumSet.of(rule)).stream().map(RunRules.Signal::place)
                .toList().toString();
    }

    /** 200 units: 20 stop in the first day, 10 in the second, 5 in the third; by hand. */
    @Test
    void whatTheThirdDayFinds() {
        List<Lifetime> soaks = new ArrayList<>(Collections.nCopies(20, Lifetime.failedAt(12)));
        soaks.addAll(Collections.nCopies(10, Lifetime.failedAt(36)));
        soaks.addAll(Collections.nCopies(5, Lifetime.failedAt(60)));
        soaks.addAll(Collections.nCopies(165, Lifetime.aliveAt(72)));
        SoakDay third = SoakDay.of(soaks, 48, 72, 0.95);
        assertEquals(170, third.reached());
        assertEquals(5, third.stopped());
        assertEquals(1000 * 5 / 170.0, third.foundPer1000(), 1e-9);
        assertEquals((165 * 24 + 5 * 12) / 5.0, third.stationHoursEach(), 1e-9);
        assertTrue(third.least() < third.foundPer1000() && third.foundPer1000() < third.most());
        List<SoakDay> days = SoakDay.eachDay(soaks, 0.95);
        assertEquals(3, days.size());
        assertEquals(third, days.get(2));
        assertEquals(100, days.get(0).foundPer1000(), 1e-9);
    }

    /** Nothing found: zero, but not more than 1 - 0.025^(1/n) (Clopper and Pearson). */
    @Test
    void aDayThatFindsNothingStillHasALimit() {
        SoakDay none = SoakDay.of(Collections.nCopies(30, Lifetime.aliveAt(72)), 48, 72, 0.95);
        assertEquals(0, none.foundPer1000());
        assertEquals(115.70331, none.most(), 1e-5);
        assertEquals(Double.POSITIVE_INFINITY, none.stationHoursEach());
        List<Lifetime> tooShort = Collections.nCopies(30, Lifetime.aliveAt(60));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 48, 72, 0.95));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 60, 72, 0.95));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 24, 24, 0.95));
        assertThrows(IllegalArgumentException.class, () -> SoakDay.of(tooShort, 0, 24, 1));
        assertTrue(SoakDay.eachDay(List.of(), 0.95).isEmpty());
        assertEquals(2, SoakDay.eachDay(tooShort, 0.95).size());
    }

    /** What is left of the surviving part that the R package MASS prints for the treated group of Freireich 1963 (verified). */
    @ParameterizedTest
    @CsvSource({ "6, 3, 0.857143", "7, 4, 0.806723", "10, 5, 0.752941", "13, 6, 0.690196", "16, 7, 0.627451", "22, 8, 0.537815",
        "23, 9, 0.448179" })
    void returnsAreWhatThePublishedCurveLoses(double until, int returned, double surviving) {
        FieldReturns returns = FieldReturns.within(SurvivalTest.TREATED, until, 0.95);
        assertEquals(1 - surviving, returns.escaped(), 1e-6);
        assertEquals(returned, returns.returned());
        assertEquals(21, returns.handedOver());
    }

    /** The same output (verified): 0.620 .. 0.952 survive at 6. */
    @Test
    void returnsHaveTheLimitsOfThePublishedCurve() {
        FieldReturns returns = FieldReturns.within(SurvivalTest.TREATED, 6, 0.95);
        assertEquals(1 - 0.952, returns.limits().lower(), 5e-4);
        assertEquals(1 - 0.620, returns.limits().upper(), 5e-4);
    }

    /** The same output (verified): of those that are left at the beginning, what is lost until the end. */
    @ParameterizedTest
    @CsvSource({ "0, 6, 1, 0.857143", "6, 7, 0.857143, 0.806723", "6, 10, 0.857143, 0.752941", "10, 13, 0.752941, 0.690196",
        "13, 16, 0.690196, 0.627451", "16, 23, 0.627451, 0.448179" })
    void aStretchFindsWhatThePublishedCurveLosesInIt(double from, double to, double before, double after) {
        assertEquals(1000 * (1 - after / before), SoakDay.of(SurvivalTest.TREATED, from, to, 0.95).foundPer1000(), 2e-3);
    }

    /** Of the units out for 90 days or returned, and those out for 30: 4/100, then of 52 left after 48 dropped out 1. */
    @Test
    void unitsThatAreNotOutForLongDoNotFlatter() {
        List<Lifetime> units = new ArrayList<>(Collections.nCopies(4, Lifetime.failedAt(10)));
        units.addAll(Collections.nCopies(44, Lifetime.aliveAt(30)));
        units.add(Lifetime.failedAt(60));
        units.addAll(Collections.nCopies(51, Lifetime.aliveAt(120)));
        FieldReturns returns = FieldReturns.within(units, 90, 0.95);
        assertEquals(1 - 0.96 * (51 / 52.0), returns.escaped(), 1e-12);
        assertEquals(5, returns.returned());
        assertEquals(100, returns.handedOver());
        assertTrue(returns.escaped() > 0.05);
        assertThrows(IllegalArgumentException.class, () -> FieldReturns.within(units, 0, 0.95));
        assertThrows(IllegalArgumentException.class, () -> FieldReturns.within(List.of(), 90, 0.95));
    }
}
