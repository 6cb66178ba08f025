package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;

import org.benchwright.evidence.Capability;
import org.benchwright.evidence.GlobalRisk.Shape;
import org.benchwright.evidence.GlobalRisk.Span;
import org.benchwright.evidence.GlobalRisk.Spread;
import org.benchwright.evidence.GlobalRisk;
import org.benchwright.evidence.MeasurementRisk;
import org.benchwright.evidence.TestUncertaintyRatio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeasurementRiskTest {

    private static final OptionalDouble NONE = OptionalDouble.empty();

    /**
     * ILAC-G8:09/2019, 4.2 and Table 1: w = U below 2.5 %, w = 0 up to 50 %. Read in public pages on decision rules of
     * laboratories (verified); the rows r = 0.83, 1.5 and 3 from memory.
     */
    @ParameterizedTest
    @CsvSource({ "1, 0.025, 0.022750, 1e-4", "0, 0.5, 0.5, 0", "0.83, 0.05, 0.04846, 1e-4", "1.5, 0.0016, 0.0013499, 1e-6",
        "3, 1e-6, 9.9e-10, 1e-11" })
    void worstCaseOfTheGuardBand(double factor, double published, double computed, double tolerance) {
        assertTrue(MeasurementRisk.worstCase(factor) <= published);
        assertEquals(computed, MeasurementRisk.worstCase(factor), tolerance);
    }

    /** JCGM 106:2012, the worked examples of clause 7 (from memory): a Zener diode, burst strength, viscosity. */
    @Test
    void conformanceProbabilitiesOfJcgm106() {
        assertEquals(0.919243, MeasurementRisk.conformanceProbability(-5.47, 0.05, NONE, OptionalDouble.of(-5.40)), 1e-6);
        assertEquals(0.989010, MeasurementRisk.conformanceProbability(509.7, 8.6, OptionalDouble.of(490), NONE), 1e-6);
        assertEquals(0.662630,
                MeasurementRisk.conformanceProbability(13.6, 1.8, OptionalDouble.of(12.5), OptionalDouble.of(16.3)),
                1e-6);
    }

    /** Values of the uncertainty calculator of Sandia National Laboratories, test of its capability index (verified). */
    @Test
    void specificRiskAndCapability() {
        OptionalDouble nine = OptionalDouble.of(9);
        OptionalDouble eleven = OptionalDouble.of(11);
        assertEquals(0.01242, MeasurementRisk.specificFalseAccept(10, 0.4, nine, eleven), 1e-5);
        assertEquals(0.833333, new Capability(9, 11, 10, 0.4).cpk(), 1e-5);
        assertEquals(0.00621, MeasurementRisk.specificFalseAccept(10, 0.4, nine, NONE), 1e-5);
        assertEquals(0.10574, MeasurementRisk.specificFalseAccept(10.5, 0.4, nine, eleven), 1e-5);
        assertEquals(0.416667, new Capability(9, 11, 10.5, 0.4).cpk(), 1e-5);
        assertEquals(0.00009, MeasurementRisk.specificFalseAccept(10.5, 0.4, nine, NONE), 1e-5);
        assertEquals(0.10565, MeasurementRisk.specificFalseAccept(10.5, 0.4, NONE, eleven), 1e-5);
        assertTrue(new Capability(9, 11, 12, 0.4).cpk() < 0);
    }

    /** Student's distribution for few readings: published as 3.75, 5.4e-3 and 3.4e-6 (verified in public test suites). */
    @Test
    void fewReadingsNeedAWiderBand() {
        assertEquals(3.7469, MeasurementRisk.guardBandOfFewReadings(0.01, 4), 1e-3 * 3.7469);
        assertEquals(5.411e-3, MeasurementRisk.worstCaseOfFewReadings(4.5, 4), 1e-3 * 5.411e-3);
        assertEquals(3.398e-6, MeasurementRisk.worstCase(4.5, 1), 1e-3 * 3.398e-6);
    }

    /** Draft table of NCSLI RP-19 as reproduced in the tests of the same calculator (verified), in percent. */
    @ParameterizedTest
    @CsvSource({ "0.60, 4.83860326, 8.26008199", "0.70, 3.92234109, 5.72322042", "0.80, 2.85583037, 3.63227145",
        "0.95, 0.87100925, 0.92389664" })
    void globalRiskOfADraftTable(double inTolerance, double falseAccept, double amongAccepted) {
        double process = GlobalRisk.processDeviation(1, inTolerance);
        GlobalRisk risk = GlobalRisk.of(0, process, process / 4, new Span(-1, 1), new Span(-1, 1));
        assertEquals(falseAccept, 100 * risk.falseAccept(), 1e-6);
        assertEquals(amongAccepted, 100 * risk.falseAcceptAmongAccepted(), 1e-6);
    }

    /** Deaver's examples, in the tests of the same calculator (verified). */
    @Test
    void globalRiskOfDeaver() {
        GlobalRisk simple = GlobalRisk.of(0, 1, 0.25, new Span(-2, 2), new Span(-2, 2));
        assertEquals(0.0080061, simple.falseAccept(), 1e-7);
        assertEquals(0.0148509, simple.falseReject(), 1e-7);
        GlobalRisk guarded = GlobalRisk.of(0, 1, 0.5, new Span(-2, 2), new Span(-1.82, 1.82));
        assertEquals(0.0080516, guarded.falseAccept(), 1e-7);
        assertEquals(0.0661065, guarded.falseReject(), 1e-7);
    }

    /**
     * With an error that is small against the scatter of the units, u in their deviations, the density at a limit is all that matters: either
     * risk is phi(2) u/sqrt(2 pi) for each limit, by hand.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 1e-6})
    void globalRiskOfATinyErrorIsThatOfTheUnitsAtTheLimits(double error) {
        GlobalRisk risk = GlobalRisk.of(0, 1, error, new Span(-2, 2), new Span(-2, 2));
        double expected = 2 * Math.exp(-2) / (2 * Math.PI) * error;
        assertEquals(expected, risk.falseAccept(), (2 * error + 1e-8) * expected);
        assertEquals(expected, risk.falseReject(), (2 * error + 1e-8) * expected);
        assertEquals(0.954499736103642, risk.accepted(), 2 * error);
    }

    @Test
    void globalRiskOfOneLimitIsHalfOfThatOfTwoFarApart() {
        GlobalRisk one = GlobalRisk.of(0, 1, 0.25, new Span(Double.NEGATIVE_INFINITY, 2),
                new Span(Double.NEGATIVE_INFINITY, 2));
        GlobalRisk two = GlobalRisk.of(0, 1, 0.25, new Span(-2, 2), new Span(-2, 2));
        assertEquals(two.falseAccept() / 2, one.falseAccept(), 1e-12);
        assertEquals(two.falseReject() / 2, one.falseReject(), 1e-12);
    }

    /** Formula of ANSI/NCSL Z540.3 method 6 as in the calculator's source (formula verified, values computed). */
    @ParameterizedTest
    @CsvSource({ "1, 0.457252, 0.542748", "2, 0.281645, 0.859177", "2.5, 0.214536, 0.914186", "4, 0.053121, 0.986720" })
    void twoPercentRisk(double ratio, double multiplier, double acceptance) {
        assertEquals(multiplier, TestUncertaintyRatio.twoPercentMultiplier(ratio), 1e-6);
        assertEquals(acceptance, TestUncertaintyRatio.TWO_PERCENT_RISK.acceptance(ratio), 1e-6);
    }

    /** Other rules, formulas from the same source, values computed. */
    @Test
    void otherRulesOnTheRatio() {
        assertEquals(-0.000708, TestUncertaintyRatio.twoPercentMultiplier(4.6), 1e-6);
        assertEquals(1, TestUncertaintyRatio.TWO_PERCENT_RISK.acceptance(4.6));
        assertEquals(0.916515, TestUncertaintyRatio.ROOT_SUM_SQUARE.acceptance(2.5), 1e-6);
        assertEquals(0.6, TestUncertaintyRatio.WHOLE_UNCERTAINTY.acceptance(2.5), 1e-6);
        assertEquals(0.85, TestUncertaintyRatio.QUARTER_ALLOWED.acceptance(2.5), 1e-6);
        assertEquals(1, TestUncertaintyRatio.QUARTER_ALLOWED.acceptance(4));
        assertEquals(0, TestUncertaintyRatio.WHOLE_UNCERTAINTY.acceptance(0.5));
        assertEquals(0, TestUncertaintyRatio.ROOT_SUM_SQUARE.acceptance(0.5));
        assertEquals(2.5, TestUncertaintyRatio.of(0.5, 0.2), 1e-15);
    }

    @Test
    void withoutUncertaintyThereIsNoDoubt() {
        assertEquals(1, MeasurementRisk.conformanceProbability(5, 0, NONE, OptionalDouble.of(5)));
        assertEquals(0, MeasurementRisk.conformanceProbability(5.1, 0, NONE, OptionalDouble.of(5)));
        assertEquals(1, MeasurementRisk.specificFalseAccept(5.1, 0, NONE, OptionalDouble.of(5)));
    }

    /** Rectangular values, by hand: the part of the span that lies inside. */
    @ParameterizedTest
    @CsvSource({ "0, 1, 1", "0.5, 1, 0.75", "1, 1, 0.5", "2, 1, 0", "0, 2, 0.5", "0.5, 4, 0.25" })
    void rectangularConformance(double measured, double halfWidth, double expected) {
        var lower = OptionalDouble.of(-1);
        var upper = OptionalDouble.of(1);
        assertEquals(expected, MeasurementRisk.conformanceOfRectangular(measured, halfWidth, lower, upper), 1e-15);
        assertEquals(expected, MeasurementRisk.conformanceOfRectangular(-measured, halfWidth, lower, upper), 1e-15);
    }

    /** Units alike over -2 .. 2, errors alike over -0.5 .. 0.5, limits -1 .. 1: two triangles of 1/16 each side, by hand. */
    @Test
    void rectangularUnitsAndErrors() {
        Spread units = new Spread(0, 2 / Math.sqrt(3), Shape.RECTANGULAR);
        Spread errors = new Spread(0, 0.5 / Math.sqrt(3), Shape.RECTANGULAR);
        GlobalRisk risk = GlobalRisk.of(units, errors, new Span(-1, 1), new Span(-1, 1));
        assertEquals(2 * 0.125 / 4, risk.falseAccept(), 1e-12);
        assertEquals(2 * 0.125 / 4, risk.falseReject(), 1e-12);
        assertEquals(0.5, risk.accepted(), 1e-12);
    }

    /** Any shapes, against chance: within four standard errors. */
    @ParameterizedTest
    @CsvSource({ "NORMAL, NORMAL", "NORMAL, RECTANGULAR", "RECTANGULAR, NORMAL", "RECTANGULAR, RECTANGULAR" })
    void risksAgreeWithSimulation(Shape ofUnits, Shape ofErrors) {
        GlobalRisk risk = GlobalRisk.of(new Spread(0.2, 1, ofUnits), new Spread(0.05, 0.3, ofErrors), new Span(-1.5, 1.5),
                new Span(-1.3, 1.3));
        Random random = new Random(106);
        int runs = 200_000;
        int wronglyAccepted = 0;
        int wronglyRejected = 0;
        for (int run = 0; run < runs; run++) {
            double truth = 0.2 + one(random, ofUnits);
            boolean accepted = Math.abs(truth + 0.05 + 0.3 * one(random, ofErrors)) <= 1.3;
            wronglyAccepted += accepted && Math.abs(truth) > 1.5 ? 1 : 0;
            wronglyRejected += !accepted && Math.abs(truth) <= 1.5 ? 1 : 0;
        }
        assertEquals(risk.falseAccept(), (double) wronglyAccepted / runs, 4 * Math.sqrt(risk.falseAccept() / runs));
        assertEquals(risk.falseReject(), (double) wronglyRejected / runs, 4 * Math.sqrt(risk.falseReject() / runs));
    }

    private static double one(Random random, Shape shape) {
        return shape == Shape.NORMAL ? random.nextGaussian() : Math.sqrt(3) * (2 * random.nextDouble() - 1);
    }

    @Test
    void refusesNonsense() {
        OptionalDouble one = OptionalDouble.of(1);
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.conformanceProbability(1, 1, NONE, NONE));
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.conformanceProbability(1, -1, one, NONE));
        assertThrows(IllegalArgumentException.class,
                () -> MeasurementRisk.conformanceProbability(Double.NaN, 1, one, NONE));
        assertThrows(IllegalArgumentException.class,
                () -> MeasurementRisk.specificFalseAccept(1, 1, OptionalDouble.of(2), one));
        assertThrows(IllegalArgumentException.class,
                () -> MeasurementRisk.specificFalseAccept(1, 1, OptionalDouble.of(Double.NaN), NONE));
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.worstCase(-0.1));
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.worstCase(1, 0));
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.guardBandOfFewReadings(0, 4));
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.guardBandOfFewReadings(0.6, 4));
        assertThrows(IllegalArgumentException.class, () -> MeasurementRisk.worstCaseOfFewReadings(1, 0));
        assertThrows(IllegalArgumentException.class, () -> new Span(2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Span(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class,
                () -> new Span(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
        Span span = new Span(-1, 1);
        assertThrows(IllegalArgumentException.class, () -> GlobalRisk.of(0, 0, 1, span, span));
        assertThrows(IllegalArgumentException.class, () -> GlobalRisk.of(0, 1, 0, span, span));
        assertThrows(IllegalArgumentException.class, () -> GlobalRisk.processDeviation(1, 1));
        assertThrows(IllegalArgumentException.class, () -> TestUncertaintyRatio.of(1, 0));
        assertThrows(IllegalArgumentException.class, () -> TestUncertaintyRatio.ROOT_SUM_SQUARE.acceptance(0));
        assertThrows(IllegalArgumentException.class, () -> TestUncertaintyRatio.twoPercentMultiplier(-1));
    }
}
