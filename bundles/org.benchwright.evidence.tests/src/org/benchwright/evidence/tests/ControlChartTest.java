package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.benchwright.evidence.Capability;
import org.benchwright.evidence.ChartConstants;
import org.benchwright.evidence.ControlChart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ControlChartTest {

    /** Wafer thickness, 20 days of 5 readings: data set CCXBAR of the NIST program Dataplot (public domain). */
    private static final List<List<Double>> WAFERS = inFives("""
            24.5 22.4 23.7 23.5 23.8 23.6 23.8 22.5 22.5 23.0 25.0 22.6 23.7 22.7 22.9 24.3 22.6 23.2 23.3 23.2
            23.8 24.9 23.6 22.5 24.8 24.4 22.8 22.6 22.9 23.1 23.7 22.9 23.3 23.2 23.9 23.4 23.7 23.5 23.4 23.3
            24.9 23.9 23.1 24.5 23.7 23.0 23.8 22.5 23.6 23.4 24.8 24.0 24.1 23.9 23.9 24.4 23.7 23.2 23.0 23.8
            24.9 24.0 22.2 23.2 22.3 24.3 23.6 22.4 23.2 23.2 23.4 23.7 24.0 22.5 24.0 25.3 24.9 23.1 22.6 23.7
            24.1 23.6 23.8 24.0 23.3 25.9 25.4 22.4 24.3 24.3 26.4 24.4 22.1 26.4 23.2 27.8 22.7 25.0 25.9 25.4""");

    private static List<List<Double>> inFives(String numbers) {
        List<Double> all = Arrays.stream(numbers.split("\\s+")).map(Double::valueOf).toList();
        List<List<Double>> groups = new ArrayList<>();
        for (int i = 0; i < all.size(); i += 5) {
            groups.add(all.subList(i, i + 5));
        }
        return groups;
    }

    /** Montgomery, Appendix VI, as quoted in a public test (verified): printed digits, so good to half of the last. */
    @ParameterizedTest
    @CsvSource({ "2, 1.880, 0, 3.267, 1.128, 0.7979", "3, 1.023, 0, 2.574, 1.693, 0.8862",
        "4, 0.729, 0, 2.282, 2.059, 0.9213", "5, 0.577, 0, 2.114, 2.326, 0.9400", "6, 0.483, 0, 2.004, 2.534, 0.9515",
        "7, 0.419, 0.076, 1.924, 2.704, 0.9594", "8, 0.373, 0.136, 1.864, 2.847, 0.9650",
        "9, 0.337, 0.184, 1.816, 2.970, 0.9693", "10, 0.308, 0.223, 1.777, 3.078, 0.9727" })
    void constantsOfMontgomery(int size, double a2, double lower, double upper, double d2, double c4) {
        ChartConstants constants = ChartConstants.of(size);
        assertEquals(a2, constants.a2(), 5.1e-4);
        assertEquals(lower, constants.lowerRangeFactor(), 5.1e-4);
        assertEquals(upper, constants.upperRangeFactor(), 6.5e-4);
        assertEquals(d2, constants.d2(), 5.1e-4);
        assertEquals(c4, constants.c4(), 5.1e-5);
    }

    /** For two readings everything is known in closed form: d2 = 2/sqrt(pi), d3 = sqrt(2 - 4/pi), c4 = sqrt(2/pi). */
    @Test
    void constantsOfTwoInClosedForm() {
        ChartConstants constants = ChartConstants.of(2);
        assertEquals(2 / Math.sqrt(Math.PI), constants.d2(), 1e-12);
        assertEquals(Math.sqrt(2 - 4 / Math.PI), constants.d3(), 1e-12);
        assertEquals(Math.sqrt(2 / Math.PI), constants.c4(), 1e-12);
        // 2.660 in the e-Handbook 6.3.2.2 (verified)
        assertEquals(2.660, 3 / constants.d2(), 2e-3);
    }

    /**
     * Flow rates of ten batches, e-Handbook 6.3.2.2: answers verified in a list of its published results, data from
     * memory. The handbook's limits 55.8041 and 45.8159 use d2 rounded to 1.128.
     */
    @Test
    void individualsChartOfNist() {
        ControlChart chart = ControlChart.individuals(Datasets.BATCHES);
        assertEquals(50.81, chart.centre(), 1e-12);
        assertEquals(1.8778, ControlChart.movingRange(Datasets.BATCHES).centre(), 5e-5);
        assertEquals(55.8024, chart.upper(), 5e-5);
        assertEquals(45.8176, chart.lower(), 5e-5);
        assertEquals(55.8041, chart.centre() + (chart.upper() - chart.centre()) * ChartConstants.of(2).d2() / 1.128, 5e-5);
        assertEquals(List.of(), chart.signals());
        // D4(2) = 3.267 (verified) times the mean moving range
        assertEquals(6.135, ControlChart.movingRange(Datasets.BATCHES).upper(), 2e-3);
        assertEquals(0, ControlChart.movingRange(Datasets.BATCHES).lower());
    }

    /** Limits computed with Montgomery's rounded A2 = 0.577 and D4 = 2.114. */
    @Test
    void meansAndRangesOfWafers() {
        ControlChart means = ControlChart.means(WAFERS);
        ControlChart ranges = ControlChart.ranges(WAFERS);
        assertEquals(23.726, means.centre(), 1e-9);
        assertEquals(2.05, ranges.centre(), 1e-9);
        assertEquals(22.54315, means.lower(), 1e-3);
        assertEquals(24.90885, means.upper(), 1e-3);
        assertEquals(0, ranges.lower());
        assertEquals(4.3337, ranges.upper(), 2e-3);
        assertEquals(0.88134, ranges.centre() / ChartConstants.of(5).d2(), 1e-4);
        assertEquals(List.of(19), means.signals());
        // the ranges of the last two days are 4.3 and 5.1
        assertEquals(List.of(19), ranges.signals());
    }

    /** e-Handbook 6.1.6 (verified). */
    @Test
    void capabilityOfNist() {
        Capability capability = new Capability(8, 20, 16, 2);
        assertEquals(1.0, capability.cp(), 5e-5);
        assertEquals(0.6667, capability.cpk(), 5e-5);
        assertEquals(0.6667, capability.cpu(), 5e-5);
        assertEquals(1.3333, capability.cpl(), 5e-5);
        assertEquals(0.3333, capability.offCentre(), 5e-5);
    }

    @Test
    void refusesNonsense() {
        List<Double> one = List.of(1.0);
        List<Double> undefined = List.of(1.0, Double.NaN);
        List<List<Double>> uneven = List.of(List.of(1.0, 2.0), List.of(1.0, 2.0, 3.0));
        List<List<Double>> none = List.of();
        assertThrows(IllegalArgumentException.class, () -> ChartConstants.of(1));
        assertThrows(IllegalArgumentException.class, () -> ChartConstants.of(101));
        assertThrows(IllegalArgumentException.class, () -> ControlChart.individuals(one));
        assertThrows(IllegalArgumentException.class, () -> ControlChart.individuals(undefined));
        assertThrows(IllegalArgumentException.class, () -> ControlChart.means(uneven));
        assertThrows(IllegalArgumentException.class, () -> ControlChart.ranges(none));
        assertThrows(IllegalArgumentException.class, () -> ControlChart.means(List.of(one)));
        assertThrows(IllegalArgumentException.class, () -> new Capability(1, 1, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Capability(1, 2, 1, 0));
    }
}
