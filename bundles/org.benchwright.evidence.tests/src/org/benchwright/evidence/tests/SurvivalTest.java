package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

import org.benchwright.evidence.ExponentialFit;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.LogRank;
import org.benchwright.evidence.MedianRank;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.evidence.WeibullFit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurvivalTest {

    static final List<Lifetime> TREATED = lifetimes(Datasets.TREATED);
    static final List<Lifetime> CONTROL = lifetimes("1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23");

    static List<Lifetime> lifetimes(String times) {
        return Arrays.stream(times.split(" ")).map(each -> each.endsWith("+")
                ? Lifetime.aliveAt(Double.parseDouble(each.substring(0, each.length() - 1)))
                : Lifetime.failedAt(Double.parseDouble(each))).toList();
    }

    /** Printed output of the R package MASS for these data (verified); more digits computed. */
    @ParameterizedTest
    @CsvSource({ "0, 6, 21, 3, 0.857143, 0.076360", "1, 7, 17, 1, 0.806723, 0.086935", "2, 10, 15, 1, 0.752941, 0.096350",
        "3, 13, 12, 1, 0.690196, 0.106815", "4, 16, 11, 1, 0.627451, 0.114054", "5, 22, 7, 1, 0.537815, 0.128234",
        "6, 23, 6, 1, 0.448179, 0.134591" })
    void treatedGroup(int place, double time, int atRisk, int failures, double survival, double error) {
        SurvivalCurve.Step step = SurvivalCurve.of(TREATED).steps().get(place);
        assertEquals(time, step.time());
        assertEquals(atRisk, step.atRisk());
        assertEquals(failures, step.failures());
        assertEquals(survival, step.survival(), 1e-6);
        assertEquals(error, step.standardError().orElseThrow(), 1e-6);
        assertEquals(survival, SurvivalCurve.of(TREATED).at(time), 1e-6);
    }

    /** The same output (verified): 0.620 .. 0.952. */
    @Test
    void limitsOfTheTreatedGroup() {
        var limits = SurvivalCurve.of(TREATED).steps().get(0).limits(0.95);
        assertEquals(0.620, limits.lower(), 5e-4);
        assertEquals(0.952, limits.upper(), 5e-4);
    }

    /** The same output (verified). */
    @Test
    void controlGroup() {
        SurvivalCurve curve = SurvivalCurve.of(CONTROL);
        double[] survival = { .9048, .8095, .7619, .6667, .5714, .3810, .2857, .1905, .1429, .0952, .0476, 0 };
        double[] errors = { .0641, .0857, .0929, .1029, .1080, .1060 };
        for (int i = 0; i < survival.length; i++) {
            assertEquals(survival[i], curve.steps().get(i).survival(), 5e-5);
        }
        for (int i = 0; i < errors.length; i++) {
            assertEquals(errors[i], curve.steps().get(i).standardError().orElseThrow(), 5e-5);
        }
        assertEquals(OptionalDouble.empty(), curve.steps().get(11).standardError());
        assertEquals(0, curve.steps().get(11).limits(0.95).lower());
        assertEquals(OptionalDouble.of(8), curve.median());
    }

    @Test
    void aCurveStartsAtOneAndNeedNotReachOneHalf() {
        assertEquals(1, SurvivalCurve.of(TREATED).at(5.99));
        assertEquals(OptionalDouble.of(23), SurvivalCurve.of(TREATED).median());
        SurvivalCurve noneFailed = SurvivalCurve.of(lifetimes("72+ 72+"));
        assertEquals(1, noneFailed.at(100));
        assertEquals(OptionalDouble.empty(), noneFailed.median());
    }

    /** lifelines, test of its log-rank test (verified): 16.8; more digits and the parts computed. */
    @Test
    void logRankOfBothGroups() {
        LogRank test = LogRank.of(TREATED, CONTROL);
        assertEquals(16.7929410, test.statistic(), 1e-6);
        assertEquals(4.1688e-05, test.probability(), 1e-9);
        assertEquals(9, test.observed());
        assertEquals(19.250501, test.expected(), 1e-6);
        assertEquals(6.256961, test.variance(), 1e-6);
        LogRank mirrored = LogRank.of(CONTROL, TREATED);
        assertEquals(21, mirrored.observed());
        assertEquals(10.749499, mirrored.expected(), 1e-6);
        assertEquals(test.statistic(), mirrored.statistic(), 1e-12);
    }

    @Test
    void groupsThatAreAlikeDoNotDiffer() {
        LogRank test = LogRank.of(CONTROL, CONTROL);
        assertEquals(0, test.statistic(), 1e-12);
        assertEquals(1, test.probability(), 1e-6);
    }

    /** MASS, the same example (verified): log-means 3.686 and 3.686 - 1.527. */
    @Test
    void exponentialFits() {
        assertEquals(359 / 9.0, ExponentialFit.of(TREATED).meanTime(), 1e-12);
        assertEquals(3.686, Math.log(ExponentialFit.of(TREATED).meanTime()), 1e-3);
        assertEquals(3.686 - 1.527, Math.log(ExponentialFit.of(CONTROL).meanTime()), 1e-3);
        assertEquals(21, ExponentialFit.of(CONTROL).failures());
    }

    /** MASS, the same example (verified): intercept 3.516, control -1.267, scale 0.732, log-likelihood -106.6. */
    @Test
    void weibullFitWithACommonShape() {
        WeibullFit fit = WeibullFit.ofGroups(List.of(TREATED, CONTROL));
        assertEquals(3.516, Math.log(fit.scales().get(0)), 5e-4);
        assertEquals(-1.267, Math.log(fit.scales().get(1) / fit.scales().get(0)), 5e-4);
        assertEquals(0.732194, 1 / fit.shape(), 1e-6);
        assertEquals(-106.5795, fit.logLikelihood(), 5e-4);
    }

    /** Breakdown of an insulating fluid at 34 and 26 kV; estimates printed in tests of the R package survival (verified). */
    @Test
    void weibullFitsOfInsulatingFluid() {
        WeibullFit at34 = WeibullFit.of(lifetimes(Datasets.FLUID_AT_34_KV));
        assertEquals(0.77082, at34.shape(), 1e-5);
        assertEquals(12.22222, at34.scales().get(0), 1e-5);
        WeibullFit at26 = WeibullFit.of(lifetimes("5.79 1579.52 2323.70"));
        assertEquals(0.54519, at26.shape(), 1e-5);
        assertEquals(955.74665, at26.scales().get(0), 1e-2);
    }

    /** Ball bearings of Lieblein and Zelen 1956; estimates as in Lawless 2003, from memory, digits computed. */
    @Test
    void weibullFitOfBallBearings() {
        WeibullFit fit = WeibullFit.of(lifetimes(Datasets.BEARINGS));
        assertEquals(2.1020589, fit.shape(), 1e-4);
        assertEquals(81.8783340, fit.scales().get(0), 1e-4);
        assertEquals(-113.69129, fit.logLikelihood(), 1e-4);
    }

    /** Ten of twenty units failed within 500 h: NIST/SEMATECH e-Handbook 8.4.1.2, from memory. */
    @Test
    void weibullFitOfAStoppedTest() {
        List<Lifetime> units = new ArrayList<>(lifetimes("54 187 216 240 244 335 361 373 375 386"));
        units.addAll(Stream.generate(() -> Lifetime.aliveAt(500)).limit(10).toList());
        WeibullFit fit = WeibullFit.of(units);
        assertEquals(1.7208, fit.shape(), 5e-5);
        assertEquals(606.5280, fit.scales().get(0), 5e-4);
        assertEquals(Math.exp(-1), fit.survival(0, fit.scales().get(0)), 1e-12);
    }

    @Test
    void aWeibullFitDoesNotDependOnTheUnitOfTime() {
        WeibullFit hours = WeibullFit.of(TREATED);
        for (double factor : new double[] { 1e-9, 3600, 1e12 }) {
            WeibullFit other = WeibullFit.of(
                    TREATED.stream().map(each -> new Lifetime(each.time() * factor, each.failed())).toList());
            assertEquals(hours.shape(), other.shape(), 1e-9);
            assertEquals(hours.scales().get(0) * factor, other.scales().get(0), 1e-9 * factor * 50);
        }
    }

    /** Abernethy, The New Weibull Handbook, from memory. */
    @Test
    void medianRanksOfFive() {
        double[] benard = { 0.1296, 0.3148, 0.5, 0.6852, 0.8704 };
        double[] exact = { 0.1294, 0.3138, 0.5, 0.6862, 0.8706 };
        for (int i = 1; i <= 5; i++) {
            assertEquals(benard[i - 1], MedianRank.benard(i, 5), 5e-5);
            assertEquals(exact[i - 1], MedianRank.exact(i, 5), 5e-5);
        }
    }

    @Test
    void refusesNonsense() {
        List<Lifetime> none = List.of();
        List<Lifetime> alive = lifetimes("72+ 72+");
        List<Lifetime> alike = lifetimes("5 5 5");
        assertThrows(IllegalArgumentException.class, () -> Lifetime.failedAt(0));
        assertThrows(IllegalArgumentException.class, () -> Lifetime.aliveAt(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> SurvivalCurve.of(none));
        assertThrows(IllegalArgumentException.class, () -> SurvivalCurve.of(alive).at(-1));
        assertThrows(IllegalArgumentException.class, () -> SurvivalCurve.of(TREATED).steps().get(0).limits(1));
        assertThrows(IllegalArgumentException.class, () -> LogRank.of(none, alive));
        assertThrows(IllegalArgumentException.class, () -> LogRank.of(alive, alive));
        assertThrows(IllegalArgumentException.class, () -> ExponentialFit.of(alive));
        assertThrows(IllegalArgumentException.class, () -> WeibullFit.of(alive));
        String words = assertThrows(IllegalArgumentException.class, () -> WeibullFit.of(alike)).getMessage();
        assertTrue(words.contains("too few differ"), words);
        assertThrows(IllegalArgumentException.class, () -> WeibullFit.ofGroups(List.of()));
        assertThrows(IllegalArgumentException.class, () -> WeibullFit.of(TREATED).survival(0, -1));
        assertThrows(IllegalArgumentException.class, () -> MedianRank.benard(0, 5));
        assertThrows(IllegalArgumentException.class, () -> MedianRank.exact(6, 5));
    }
}
