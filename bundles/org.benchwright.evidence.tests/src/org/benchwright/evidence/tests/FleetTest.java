package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

import org.benchwright.evidence.AnalysisOfVariance;
import org.benchwright.evidence.Drift;
import org.benchwright.evidence.Pareto;
import org.benchwright.evidence.VarianceSplit;
import org.benchwright.evidence.VarianceSplit.Reading;
import org.junit.jupiter.api.Test;

class FleetTest {

    /** Three appraisers, ten parts, three trials: the gauge study of the AIAG manual on measurement systems (from memory). */
    private static final String GAUGE = """
            A 0.29 -0.56 1.34 0.47 -0.80 0.02 0.59 -0.31 2.26 -1.36
            A 0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25
            A 0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31
            B 0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68
            B 0.25 -1.22 0.94 1.03 -1.20 0.22 0.55 0.08 2.12 -1.62
            B 0.07 -0.68 1.34 0.20 -1.28 0.06 0.83 -0.34 2.19 -1.50
            C 0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49
            C -0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77
            C -0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16
            """;

    /** Calibration of ozone monitors, 36 pairs y x: set Norris of the NIST Statistical Reference Datasets (from memory). */
    private static final String NORRIS = "0.1 0.2 338.8 337.4 118.1 118.2 888.0 884.6 9.2 10.1 228.1 226.5 668.5 666.3 "
            + "998.5 996.3 449.1 448.6 778.9 777.0 559.2 558.2 0.3 0.4 0.1 0.6 778.1 775.5 668.8 666.9 339.3 338.0 448.9 "
            + "447.5 10.8 11.6 557.7 556.0 228.3 228.1 998.0 995.8 888.8 887.6 119.6 120.2 0.3 0.3 0.6 0.3 557.6 556.8 "
            + "339.3 339.1 888.0 887.2 998.5 999.0 778.9 779.0 10.2 11.1 117.6 118.3 228.9 229.2 668.4 669.1 449.2 448.9 "
            + "0.2 0.5";

    private static List<Reading> gauge() {
        List<Reading> readings = new ArrayList<>();
        for (String line : GAUGE.strip().split("\n")) {
            String[] words = line.split(" ");
            for (int part = 1; part < words.length; part++) {
                readings.add(new Reading(Double.parseDouble(words[part]), List.of(words[0], "part " + part)));
            }
        }
        return readings;
    }

    /**
     * The manual's analysis: sums of squares 3.1673 (appraisers), 88.3619 (parts), 94.6471 in all; pooled mean square
     * 0.03997; standard deviations 0.19993, 0.226838 and 1.042327 (from memory).
     */
    @Test
    void splitOfAGaugeStudy() {
        VarianceSplit split = VarianceSplit.of(gauge());
        assertEquals(0.226838, split.deviation(0), 5e-6);
        assertEquals(1.042327, split.deviation(1), 5e-6);
        assertEquals(0.19993, split.deviation(2), 5e-6);
        assertEquals(0.03997, split.components().get(2), 5e-6);
        assertEquals(1.085, Math.sqrt(split.total()), 5e-4);
        AnalysisOfVariance parts = AnalysisOfVariance.of(by(1));
        assertEquals(88.3619, parts.between(), 5e-5);
        assertEquals(94.6471, parts.between() + parts.within(), 5e-5);
        assertEquals(3.1673, AnalysisOfVariance.of(by(0)).between(), 5e-5);
    }

    private static List<List<Double>> by(int factor) {
        return gauge().stream().map(each -> each.levels().get(factor)).distinct()
                .map(level -> gauge().stream().filter(each -> each.levels().get(factor).equals(level)).map(Reading::value)
                        .toList())
                .toList();
    }

    /** Unequal numbers, one factor: (mean square between - within)/n0, n0 = (N - sum n^2/N)/(k - 1), by hand. */
    @Test
    void splitWithUnequalNumbers() {
        List<Reading> readings = List.of(new Reading(10, List.of("a")), new Reading(12, List.of("a")),
                new Reading(20, List.of("b")), new Reading(22, List.of("b")), new Reading(24, List.of("b")));
        VarianceSplit split = VarianceSplit.of(readings);
        double within = (2 + 8) / 3.0;
        double between = 2 * Math.pow(11 - 17.6, 2) + 3 * Math.pow(22 - 17.6, 2);
        assertEquals(within, split.components().get(1), 1e-9);
        assertEquals((between - within) / (5 - 13 / 5.0), split.components().get(0), 1e-9);
    }

    /** NIST Statistical Reference Datasets, analysis of variance: certified values (verified). */
    @Test
    void silverAndResistivity() throws IOException {
        AnalysisOfVariance resistivity = AnalysisOfVariance.of(Datasets.columns("SiRstvt"));
        assertEquals(5.11462616E-02, resistivity.between(), 1e-10);
        assertEquals(2.16636560E-01, resistivity.within(), 1e-10);
        assertEquals(1.18046237440255, resistivity.statistic(), 1e-9);
        assertEquals(0.190999039051129, resistivity.explained(), 1e-10);
        assertEquals(0.104076068334656, resistivity.residualDeviation(), 1e-10);
        assertEquals(4, resistivity.betweenDegrees());
        assertEquals(20, resistivity.withinDegrees());
        AnalysisOfVariance silver = AnalysisOfVariance.of(Datasets.columns("AtmWtAgt"));
        assertEquals(3.638341875E-09, silver.between(), 1e-5 * 3.6e-9);
        assertEquals(1.04951729166667E-08, silver.within(), 1e-5 * 1e-8);
        assertEquals(15.9467335677930, silver.statistic(), 2e-4);
        assertEquals(0.257426544538321, silver.explained(), 2e-6);
        assertEquals(1.51048314446410E-05, silver.residualDeviation(), 1e-10);
        assertTrue(silver.probability() < 0.001 && resistivity.probability() > 0.1);
    }

    /** Certified values of Norris (verified in memory by the data themselves: all five agree). */
    @Test
    void lineOfNorris() {
        List<Double> numbers = Arrays.stream(NORRIS.split(" ")).map(Double::valueOf).toList();
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int i = 0; i < numbers.size(); i += 2) {
            y.add(numbers.get(i));
            x.add(numbers.get(i + 1));
        }
        Drift line = Drift.of(x, y);
        assertEquals(36, line.count());
        assertEquals(-0.262323073774029, line.intercept(), 1e-11);
        assertEquals(1.00211681802045, line.slope(), 1e-13);
        assertEquals(0.232818234301152, line.interceptError(), 1e-12);
        assertEquals(0.429796848199937E-03, line.slopeError(), 1e-14);
        assertEquals(0.884796396144373, line.residualDeviation(), 1e-12);
        assertTrue(line.probability() < 1e-12);
        // t(34) at 95 % two-sided is 2.0322 (printed in tables of Student's distribution, from memory)
        assertEquals(2.0322, line.slopeReach(0.95) / line.slopeError(), 5e-5);
    }

    @Test
    void whatDoesNotMoveDoesNotDrift() {
        Drift still = Drift.of(List.of(1.0, 2.0, 3.0), List.of(5.0, 5.0, 5.0));
        assertEquals(0, still.slope());
        assertEquals(1, still.probability());
        AnalysisOfVariance alike = AnalysisOfVariance.of(List.of(List.of(5.0, 5.0), List.of(5.0)));
        assertEquals(0, alike.statistic());
        assertEquals(1, alike.probability());
        assertEquals(0, AnalysisOfVariance.of(List.of(List.of(1.0, 1.0), List.of(2.0))).probability());
    }

    @Test
    void theMostFrequentCauseComesFirst() {
        Pareto pareto = Pareto.of(Map.of("W01", 3L, "B07", 5L, "A00", 3L, "never", 0L));
        assertEquals(List.of("B07", "A00", "W01"), pareto.bars().stream().map(Pareto.Bar::name).toList());
        assertEquals(11, pareto.total());
        assertEquals(5 / 11.0, pareto.bars().get(0).share());
        assertEquals(8 / 11.0, pareto.bars().get(1).cumulative());
        assertEquals(1, pareto.bars().get(2).cumulative());
        assertTrue(Pareto.of(Map.of()).bars().isEmpty());
    }

    @Test
    void refusesNonsense() {
        List<Double> two = List.of(1.0, 2.0);
        List<Double> undefined = List.of(1.0, Double.NaN);
        List<Double> alike = List.of(1.0, 1.0, 1.0);
        List<Reading> confounded = List.of(new Reading(1, List.of("a", "x")), new Reading(2, List.of("a", "x")),
                new Reading(3, List.of("b", "y")), new Reading(4, List.of("b", "y")));
        assertThrows(IllegalArgumentException.class, () -> AnalysisOfVariance.of(List.of(two)));
        assertThrows(IllegalArgumentException.class, () -> AnalysisOfVariance.of(List.of(two, List.of())));
        assertThrows(IllegalArgumentException.class, () -> AnalysisOfVariance.of(List.of(two, undefined)));
        assertThrows(IllegalArgumentException.class, () -> AnalysisOfVariance.of(List.of(List.of(1.0), List.of(2.0))));
        assertThrows(IllegalArgumentException.class, () -> VarianceSplit.of(List.of()));
        assertThrows(IllegalArgumentException.class, () -> VarianceSplit.of(confounded));
        assertThrows(IllegalArgumentException.class, () -> new Reading(Double.NaN, List.of("a")));
        assertThrows(IllegalArgumentException.class, () -> Drift.of(two, two));
        assertThrows(IllegalArgumentException.class, () -> Drift.of(alike, List.of(1.0, 2.0, 3.0)));
        assertThrows(IllegalArgumentException.class, () -> Drift.of(alike, two));
        assertThrows(IllegalArgumentException.class, () -> Pareto.of(Map.of("a", -1L)));
    }
}
