package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.OptionalDouble;

import org.benchwright.evidence.Soak;
import org.benchwright.evidence.Soak.End;
import org.benchwright.evidence.SuccessRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SoakTest {

    /** NIST/SEMATECH e-Handbook 8.4.5.1, worked example (verified in a script built on that page's). */
    @Test
    void limitsOfTheNistExample() {
        Soak.MeanTime limits = Soak.limits(800, 2, 0.90, End.AT_A_TIME);
        assertEquals(127.0690, limits.lower(), 1e-3);
        assertEquals(2251.229, limits.upper().orElseThrow(), 1e-3);
    }

    /** Examples 1 and 2 of the test planner of the Python package reliability (verified). */
    @Test
    void boundsOfATestPlanner() {
        assertEquals(1658.3248534993454, Soak.limits(19520, 7, 0.80, End.AT_A_TIME).lower(), 1e-9 * 1658);
        assertEquals(1101.8815940201118, Soak.lowerBound(10000, 6, 0.80, End.AT_A_TIME), 1e-9 * 1101);
    }

    /** Inputs and formula of an example of the R package mcotear; 1 - exp(-2) computed. */
    @Test
    void demonstratedConfidence() {
        assertEquals(0.8646647167633873, Soak.demonstratedConfidence(500, 0, 250), 1e-12);
    }

    /** Factor tables of the e-Handbook 8.4.5.1, row r = 0 (from memory). */
    @ParameterizedTest
    @CsvSource({ "0.60, 0.6213", "0.80, 0.4343", "0.90, 0.3338", "0.95, 0.2711" })
    void withoutAStopThereIsNoUpperLimit(double confidence, double factor) {
        Soak.MeanTime limits = Soak.limits(1, 0, confidence, End.AT_A_TIME);
        assertEquals(factor, limits.lower(), 5e-5);
        assertEquals(OptionalDouble.empty(), limits.upper());
    }

    /** -ln(1 - C), e-Handbook 8.3.1.2 (from memory). */
    @ParameterizedTest
    @CsvSource({ "0.50, 0.693147", "0.60, 0.916291", "0.80, 1.609438", "0.90, 2.302585", "0.95, 2.995732",
        "0.99, 4.605170" })
    void lengthOfASoakWithoutStops(double confidence, double factor) {
        assertEquals(factor, Soak.lengthFor(1, confidence), 1e-6);
        assertEquals(factor, Soak.totalTimeFor(1, 0, confidence), 1e-6);
        assertEquals(1 / factor, Soak.lowerBound(1, 0, confidence, End.AT_A_TIME), 1e-6);
    }

    /** Test-length table of the e-Handbook 8.3.1.2 and MIL-HDBK-338B, chapter 8 (from memory). */
    @ParameterizedTest
    @CsvSource({ "1, 2.0223, 2.9943, 3.8897, 4.7439", "2, 3.1054, 4.2790, 5.3223, 6.2958",
        "3, 4.1753, 5.5150, 6.6808, 7.7537" })
    void totalTimeWithAllowedStops(int stops, double at60, double at80, double at90, double at95) {
        assertEquals(at60, Soak.totalTimeFor(1, stops, 0.60), 1e-4);
        assertEquals(at80, Soak.totalTimeFor(1, stops, 0.80), 1e-4);
        assertEquals(at90, Soak.totalTimeFor(1, stops, 0.90), 1e-4);
        assertEquals(at95, Soak.totalTimeFor(1, stops, 0.95), 1e-4);
    }

    /** Two-sided factors on the estimate T/r, e-Handbook 8.4.5.1 (from memory). */
    @ParameterizedTest
    @CsvSource({ "1, 0.60, .3340, 4.4814", "1, 0.80, .2571, 9.4912", "1, 0.90, .2108, 19.496", "1, 0.95, .1795, 39.498",
        "2, 0.60, .4674, 2.4260", "2, 0.80, .3758, 3.7607", "2, 0.90, .3177, 5.6281", "2, 0.95, .2768, 8.2573",
        "5, 0.60, .6324, 1.6184", "5, 0.80, .5391, 2.0554", "5, 0.90, .4756, 2.5379", "5, 0.95, .4285, 3.0798" })
    void twoSidedFactors(int stops, double confidence, double lower, double upper) {
        Soak.MeanTime limits = Soak.limits(stops, stops, confidence, End.AT_A_TIME);
        assertEquals(lower, limits.lower(), 1e-4);
        assertEquals(upper, limits.upper().orElseThrow(), 1e-4 * upper);
    }

    /** Chi-squared quantiles at 5, 10, 90 and 95 %, e-Handbook 1.3.6.7.4 (from memory), through the bounds. */
    @ParameterizedTest
    @CsvSource({ "2, 0.1026, 0.2107, 4.6052, 5.9915", "4, 0.7107, 1.0636, 7.7794, 9.4877",
        "6, 1.6354, 2.2041, 10.6446, 12.5916", "20, 10.8508, 12.4426, 28.4120, 31.4104" })
    void chiSquaredQuantiles(int degrees, double at05, double at10, double at90, double at95) {
        int stops = degrees / 2;
        assertEquals(at05, 2 / Soak.lowerBound(1, stops, 0.05, End.AT_A_STOP), 5e-5);
        assertEquals(at10, 2 / Soak.lowerBound(1, stops, 0.10, End.AT_A_STOP), 5e-5);
        assertEquals(at90, 2 / Soak.lowerBound(1, stops, 0.90, End.AT_A_STOP), 5e-5);
        assertEquals(at95, 2 / Soak.lowerBound(1, stops, 0.95, End.AT_A_STOP), 5e-5);
    }

    /** The exponential distribution (from memory). */
    @ParameterizedTest
    @CsvSource({ "72, 100, 0.5132477440", "72, 24, 0.9502129316", "168, 1000, 0.1546461653", "48, 1000, 0.0468662129",
        "0, 10, 0" })
    void detection(double length, double meanTime, double expected) {
        assertEquals(expected, Soak.detectionProbability(length, meanTime), 1e-9);
    }

    @Test
    void seventyTwoHoursRevealAFaultEvery31Hours() {
        Duration soak = Duration.ofHours(72);
        assertEquals(31, Soak.longestMeanTimeRevealed(soak, 0.90).toHours());
        assertTrue(Soak.supports(soak, Duration.ofHours(31), 0.90));
        assertFalse(Soak.supports(soak, Duration.ofHours(32), 0.90));
        assertTrue(Soak.supports(soak, Soak.longestMeanTimeRevealed(soak, 0.90), 0.90));
        assertTrue(Soak.supports(Soak.lengthFor(Duration.ofHours(31), 0.90), Duration.ofHours(31), 0.90));
        assertFalse(Soak.supports(Duration.ZERO, Duration.ofHours(1), 0.5));
    }

    /** Success-run theorem: widely tabulated (from memory); 2995 in the documents of the package reliability (verified). */
    @ParameterizedTest
    @CsvSource({ "0.999, 0.95, 2995", "0.90, 0.90, 22", "0.95, 0.95, 59", "0.90, 0.95, 29", "0.95, 0.90, 45",
        "0.99, 0.90, 230", "0.99, 0.95, 299", "0.99, 0.99, 459", "0.90, 0.80, 16", "0.90, 0.50, 7" })
    void successRun(double reliability, double confidence, int trials) {
        assertEquals(trials, SuccessRun.CLASSIC.trials(reliability, confidence));
        assertEquals(trials - 1, SuccessRun.UNIFORM_PRIOR.trials(reliability, confidence));
    }

    /** Cumulative binomial (from memory). */
    @ParameterizedTest
    @CsvSource({ "0, 22", "1, 38", "2, 52" })
    void successRunWithFailures(int failures, int trials) {
        assertEquals(trials, SuccessRun.CLASSIC.trials(0.90, 0.90, failures));
    }

    /** The form with n + 1, from a public page on the success-run theorem (verified). */
    @ParameterizedTest
    @CsvSource({ "10, 0.90, 0.811131", "29, 0.95, 0.904966", "59, 0.95, 0.951297" })
    void successRunWithAUniformPrior(int trials, double confidence, double reliability) {
        assertEquals(reliability, SuccessRun.UNIFORM_PRIOR.reliability(trials, confidence), 1e-6);
    }

    @Test
    void theTwoConventionsDiffer() {
        assertEquals(0.90186, SuccessRun.CLASSIC.reliability(29, 0.95), 1e-5);
        assertEquals(0.90497, SuccessRun.UNIFORM_PRIOR.reliability(29, 0.95), 1e-5);
        assertEquals(0, SuccessRun.CLASSIC.reliability(0, 0.95));
        assertEquals(0.05, SuccessRun.UNIFORM_PRIOR.reliability(0, 0.95), 1e-12);
    }

    @Test
    void refusesNonsense() {
        assertThrows(IllegalArgumentException.class, () -> Soak.detectionProbability(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> Soak.detectionProbability(1, 0));
        assertThrows(IllegalArgumentException.class, () -> Soak.longestMeanTimeRevealed(72, 1));
        assertThrows(IllegalArgumentException.class, () -> Soak.lengthFor(31, 0));
        assertThrows(IllegalArgumentException.class, () -> Soak.lowerBound(0, 0, 0.9, End.AT_A_TIME));
        assertThrows(IllegalArgumentException.class, () -> Soak.lowerBound(1, -1, 0.9, End.AT_A_TIME));
        assertThrows(IllegalArgumentException.class, () -> Soak.lowerBound(1, 0, 0.9, End.AT_A_STOP));
        assertThrows(IllegalArgumentException.class, () -> Soak.limits(1, 0, Double.NaN, End.AT_A_TIME));
        assertThrows(IllegalArgumentException.class, () -> Soak.totalTimeFor(-1, 0, 0.9));
        assertThrows(IllegalArgumentException.class, () -> Soak.demonstratedConfidence(Double.POSITIVE_INFINITY, 0, 1));
        assertThrows(IllegalArgumentException.class,
                () -> Soak.supports(Duration.ofHours(1), Duration.ZERO, 0.9));
        assertThrows(IllegalArgumentException.class, () -> SuccessRun.CLASSIC.reliability(-1, 0.9));
        assertThrows(IllegalArgumentException.class, () -> SuccessRun.CLASSIC.trials(1, 0.9));
        assertThrows(IllegalArgumentException.class, () -> SuccessRun.CLASSIC.trials(0.9, 0.9, -1));
        assertThrows(IllegalArgumentException.class, () -> SuccessRun.CLASSIC.trials(1 - 1e-12, 0.9));
    }
}
