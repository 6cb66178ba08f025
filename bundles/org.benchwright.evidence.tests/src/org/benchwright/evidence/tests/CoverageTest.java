package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

import org.hipparchus.distribution.discrete.BinomialDistribution;

import org.benchwright.evidence.Drift;
import org.benchwright.evidence.IntervalFit;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.Proportion;
import org.benchwright.evidence.Soak.End;
import org.benchwright.evidence.Soak;
import org.benchwright.evidence.StopInterval;
import org.benchwright.evidence.SurvivalCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often intervals hold the truth: by summing where that is possible, else by chance within its own error. */
class CoverageTest {

    private static final int RUNS = 4000;

    private interface Experiment {
        boolean holds(Random random);
    }

    private static void assertCovers(double promised, Experiment experiment) {
        double share = share(experiment);
        assertEquals(promised, share, 4 * Math.sqrt(promised * (1 - promised) / RUNS));
    }

    private static double share(Experiment experiment) {
        Random random = new Random(1900);
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            held += experiment.holds(random) ? 1 : 0;
        }
        return (double) held / RUNS;
    }

    /** Summed over all outcomes: the exact interval never covers less than promised, Wilson's does on average. */
    @ParameterizedTest
    @CsvSource({ "10, 0.90", "25, 0.95", "60, 0.95", "60, 0.99" })
    void exactIntervalsCoverAtLeastWhatTheyPromise(int of, double confidence) {
        double sum = 0;
        int places = 99;
        for (int place = 1; place <= places; place++) {
            double truth = place / (places + 1.0);
            double exact = coverage(of, truth, hits -> new Proportion(hits, of).clopperPearson(confidence));
            assertTrue(exact >= confidence - 1e-9, () -> truth + ": " + exact);
            sum += coverage(of, truth, hits -> new Proportion(hits, of).wilson(confidence));
        }
        assertEquals(confidence, sum / places, 0.015);
    }

    private interface Interval {
        Proportion.Interval of(long hits);
    }

    private static double coverage(int of, double truth, Interval interval) {
        BinomialDistribution outcomes = new BinomialDistribution(of, truth);
        double sum = 0;
        for (int hits = 0; hits <= of; hits++) {
            Proportion.Interval limits = interval.of(hits);
            sum += limits.lower() <= truth && truth <= limits.upper() ? outcomes.probability(hits) : 0;
        }
        return sum;
    }

    /** Exact when the last stop ends the soak; at least as good when the time does. */
    @Test
    void boundsOfASoak() {
        assertCovers(0.90, random -> {
            double total = 0;
            for (int stop = 0; stop < 4; stop++) {
                total += exponential(random, 50);
            }
            Soak.MeanTime limits = Soak.limits(total, 4, 0.90, End.AT_A_STOP);
            return limits.lower() <= 50 && 50 <= limits.upper().orElseThrow();
        });
        double share = share(random -> {
            int stops = 0;
            for (double time = exponential(random, 50); time < 200; time += exponential(random, 50)) {
                stops++;
            }
            return Soak.lowerBound(200, stops, 0.90, End.AT_A_TIME) <= 50;
        });
        assertTrue(share >= 0.90 - 4 * Math.sqrt(0.09 / RUNS), () -> "covers " + share);
    }

    /** Slopes of a straight line with normal errors: exact. */
    @Test
    void limitsOfADrift() {
        assertCovers(0.95, random -> {
            List<Double> times = new ArrayList<>();
            List<Double> readings = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                times.add((double) i);
                readings.add(24 - 0.01 * i + 0.05 * random.nextGaussian());
            }
            Drift drift = Drift.of(times, readings);
            return Math.abs(drift.slope() + 0.01) <= drift.slopeReach(0.95);
        });
    }

    /** Stops found at looks every 24 h: the likelihood ratio is approximate, so two points are allowed beside chance. */
    @Test
    void limitsOfAMeanTimeFromLooks() {
        double share = share(random -> {
            List<StopInterval> stops = new ArrayList<>();
            for (int unit = 0; unit < 60; unit++) {
                double day = Math.floor(exponential(random, 60) / 24);
                stops.add(day >= 3 ? StopInterval.never(72) : new StopInterval(24 * day, 24 * day + 24));
            }
            IntervalFit.Range limits = IntervalFit.meanTimeLimits(stops, 0.95);
            return limits.lower() <= 60 && 60 <= limits.upper();
        });
        assertEquals(0.95, share, 0.02);
    }

    /** Limits of a survival curve in its middle, where Greenwood's formula serves well: allowed 1.5 points beside chance. */
    @Test
    void limitsOfASurvivalCurve() {
        double share = share(random -> {
            List<Lifetime> units = new ArrayList<>();
            for (int unit = 0; unit < 80; unit++) {
                double stop = exponential(random, 100);
                double leaves = 40 + 60 * random.nextDouble();
                units.add(stop < leaves ? Lifetime.failedAt(stop) : Lifetime.aliveAt(leaves));
            }
            SurvivalCurve.Step last = SurvivalCurve.of(units).steps().stream().filter(step -> step.time() <= 50)
                    .reduce((first, second) -> second).orElseThrow();
            Proportion.Interval limits = last.limits(0.95);
            return limits.lower() <= Math.exp(-0.5) && Math.exp(-0.5) <= limits.upper();
        });
        assertEquals(0.95, share, 0.015 + 4 * Math.sqrt(0.95 * 0.05 / RUNS));
    }

    private static double exponential(Random random, double mean) {
        return -mean * Math.log(1 - random.nextDouble());
    }
}
