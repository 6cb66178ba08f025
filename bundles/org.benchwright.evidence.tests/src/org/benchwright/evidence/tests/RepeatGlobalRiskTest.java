package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import java.util.Random;

import org.benchwright.core.Verdict;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.GlobalRisk;
import org.benchwright.evidence.GlobalRisk.Span;
import org.benchwright.evidence.RepeatRisk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Risks over all units of a measurement that may be repeated: against the integral without repeats, and against playing it through. */
class RepeatGlobalRiskTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static RepeatRisk between(double lower, double upper, double band, double share, int readings, Combination combination) {
        OptionalDouble from = Double.isInfinite(lower) ? OptionalDouble.empty() : OptionalDouble.of(lower);
        return new RepeatRisk(from, OptionalDouble.of(upper), band, 1, share, readings, combination);
    }

    @ParameterizedTest
    @CsvSource({ "0, 5, -10, 10, 2", "3, 4, -10, 10, 2", "0, 1, -3, 3, 0", "0, 20, -2.5, 2.5, 2", "-8, 4, -Infinity, 0, 2",
        "-2, 0.1, -Infinity, 0, 1", "0, 1e-5, -2e-5, 2e-5, 0", "0, 1e5, -2e5, 2e5, 2" })
    void aSingleReadingIsTheIntegralOverBothErrors(double mean, double deviation, double lower, double upper, double band) {
        GlobalRisk expected = GlobalRisk.of(mean, deviation, 1, new Span(lower, upper), new Span(lower + band, upper - band));
        for (double share : new double[] { 0.1, 0.5, 0.9 }) {
            GlobalRisk found = GlobalRisk.of(mean, deviation, between(lower, upper, band, share, 1, Combination.LAST), true);
            assertEquals(expected.falseAccept(), found.falseAccept(), 1e-9);
            assertEquals(expected.falseReject(), found.falseReject(), 1e-9);
            assertEquals(expected.accepted(), found.accepted(), 1e-9);
        }
    }

    @Test
    void outsideBothBandsOnlyIsRejectedWhereThreeOutcomesAreAgreed() {
        GlobalRisk outer = GlobalRisk.of(0, 5, 1, new Span(-10, 10), new Span(-12, 12));
        GlobalRisk found = GlobalRisk.of(0, 5, between(-10, 10, 2, 0.5, 1, Combination.LAST), false);
        assertEquals(outer.falseReject(), found.falseReject(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({ "MEAN, 3", "LAST, 2", "BOTH_INSIDE, 3" })
    void repeatsAgreeWithPlayingThemThrough(Combination combination, int readings) {
        RepeatRisk rule = between(-4, 4, 1, 0.5, readings, combination);
        GlobalRisk reckoned = GlobalRisk.of(1, 3, rule, false);
        Random random = new Random(7);
        int games = 6_000;
        int wronglyAccepted = 0;
        int wronglyRejected = 0;
        for (int game = 0; game < games; game++) {
            double unit = 1 + 3 * random.nextGaussian();
            Verdict verdict = RepeatRiskTest.oneGame(rule, unit + Math.sqrt(0.5) * random.nextGaussian(), random);
            wronglyAccepted += Math.abs(unit) > 4 && verdict == Verdict.ACCEPTED ? 1 : 0;
            wronglyRejected += Math.abs(unit) <= 4 && verdict == Verdict.REJECTED ? 1 : 0;
        }
        near(reckoned.falseAccept(), wronglyAccepted, games);
        near(reckoned.falseReject(), wronglyRejected, games);
    }

    private static void near(double reckoned, int found, int games) {
        assertEquals(reckoned, (double) found / games, 4 * Math.sqrt(reckoned * (1 - reckoned) / games));
    }

    @Test
    void refusesAShareThatLeavesNothingToIntegrate() {
        assertThrows(IllegalArgumentException.class, () -> GlobalRisk.of(0, 5, between(-INFINITE, 1, 0, 0, 1, Combination.LAST), true));
        assertThrows(IllegalArgumentException.class, () -> GlobalRisk.of(0, 5, between(-INFINITE, 1, 0, 1, 1, Combination.LAST), true));
        assertThrows(IllegalArgumentException.class, () -> GlobalRisk.of(0, 0, between(-INFINITE, 1, 0, 0.5, 1, Combination.LAST), true));
    }
}
