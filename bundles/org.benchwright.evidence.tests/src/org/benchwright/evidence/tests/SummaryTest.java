package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.evidence.Summary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** NIST Statistical Reference Datasets, univariate summary statistics: certified values (verified). */
class SummaryTest {

    @ParameterizedTest
    @CsvSource({ "Michelso, 100, 299.852400000000, 0.0790105478190518, 0.535199668621283, 1e-10",
        "Mavro, 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248, 1e-10",
        "Lottery, 218, 518.958715596330, 291.699727470969, -0.120948622967393, 1e-10",
        "NumAcc3, 1001, 1000000.2, 0.1, -0.999, 1e-9", "NumAcc4, 1001, 10000000.2, 0.1, -0.999, 2e-8" })
    void certifiedValues(String set, int count, double mean, double deviation, double autocorrelation, double tolerance)
            throws IOException {
        Summary summary = Summary.of(Datasets.readings(set));
        assertEquals(count, summary.count());
        assertEquals(mean, summary.mean(), 1e-14 * mean);
        assertEquals(deviation, summary.standardDeviation(), tolerance * deviation);
        assertEquals(autocorrelation, summary.autocorrelation(), Math.max(tolerance, 1e-9));
    }

    @Test
    void certifiedValuesOfSetsThatNeedNoFile() {
        Summary first = Summary.of(List.of(10000001.0, 10000003.0, 10000002.0));
        assertEquals(10000002, first.mean());
        assertEquals(1, first.standardDeviation());
        assertEquals(-0.5, first.autocorrelation());
        List<Double> alternating = new ArrayList<>(List.of(1.2));
        for (int i = 0; i < 500; i++) {
            alternating.addAll(List.of(1.1, 1.3));
        }
        Summary second = Summary.of(alternating);
        assertEquals(1.2, second.mean(), 1e-14);
        assertEquals(0.1, second.standardDeviation(), 1e-12);
        assertEquals(-0.999, second.autocorrelation(), 1e-12);
    }

    /** What the two passes are for: sums of squares in one pass lose the deviation of the hardest set. */
    @Test
    void onePassWouldNotDo() throws IOException {
        List<Double> readings = Datasets.readings("NumAcc4");
        double sum = readings.stream().mapToDouble(each -> each).sum();
        double squares = readings.stream().mapToDouble(each -> each * each).sum();
        double inOnePass = (squares - sum * sum / readings.size()) / (readings.size() - 1);
        assertTrue(Math.abs(inOnePass - 0.01) > 1e-5, () -> "one pass gave " + inOnePass);
    }

    @Test
    void refusesNonsense() {
        List<Double> one = List.of(1.0);
        List<Double> undefined = List.of(1.0, Double.POSITIVE_INFINITY);
        assertThrows(IllegalArgumentException.class, () -> Summary.of(one));
        assertThrows(IllegalArgumentException.class, () -> Summary.of(undefined));
        assertEquals(0, Summary.of(List.of(5.0, 5.0)).autocorrelation());
    }
}
