package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;

import org.benchwright.evidence.ExponentialFit;
import org.benchwright.evidence.GoodnessOfFit;
import org.benchwright.evidence.IntervalFit;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.StopInterval;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.evidence.TurnbullCurve;
import org.benchwright.evidence.WeibullFit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class IntervalTest {

    /** Times to deterioration, radiotherapy alone: Finkelstein and Wolfe 1985 (from memory; the estimate confirms them). */
    private static final List<StopInterval> COSMESIS = intervals("0-7 0-8 0-5 4-11 5-12 5-11 6-10 7-16 7-14 11-15 11-18 "
            + "17-25 17-25 19-35 18-26 25-37 26-40 27-34 36-44 36-48 37-44 15+ 17+ 18+ 22+ 24+ 24+ 32+ 33+ 34+ 36+ 36+ "
            + "37+ 37+ 37+ 38+ 40+ 45+ 46+ 46+ 46+ 46+ 46+ 46+ 46+ 46+");

    private static List<StopInterval> intervals(String text) {
        return Arrays.stream(text.split(" ")).map(IntervalTest::interval).toList();
    }

    private static StopInterval interval(String text) {
        if (text.endsWith("+")) {
            return StopInterval.never(Double.parseDouble(text.substring(0, text.length() - 1)));
        }
        String[] ends = text.split("-");
        return ends.length == 1 ? StopInterval.at(Double.parseDouble(text))
                : new StopInterval(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
    }

    /** The estimate printed in the vignette of the R package interval (from memory), to its four digits. */
    @ParameterizedTest
    @CsvSource({ "0, 4, 5, 0.0463", "1, 6, 7, 0.0334", "2, 7, 8, 0.0887", "3, 11, 12, 0.0708", "4, 24, 25, 0.0926",
        "5, 33, 34, 0.0818", "6, 38, 40, 0.1209", "7, 46, 48, 0.4656" })
    void turnbullEstimateOfCosmesis(int place, double after, double by, double weight) {
        TurnbullCurve curve = TurnbullCurve.of(COSMESIS);
        assertEquals(8, curve.masses().size());
        TurnbullCurve.Mass mass = curve.masses().get(place);
        assertEquals(after, mass.after());
        assertEquals(by, mass.by());
        assertEquals(weight, mass.weight(), 5.1e-5);
    }

    @Test
    void whatTheLooksDoNotTellIsNotTold() {
        TurnbullCurve curve = TurnbullCurve.of(COSMESIS);
        assertEquals(1, curve.at(0).orElseThrow());
        assertEquals(1, curve.at(4).orElseThrow());
        assertEquals(OptionalDouble.empty(), curve.at(4.5));
        assertEquals(0.9537, curve.at(5).orElseThrow(), 5.1e-5);
        assertEquals(0.4656, curve.at(46).orElseThrow(), 5.1e-5);
        assertEquals(OptionalDouble.empty(), curve.at(47));
        TurnbullCurve neverStopped = TurnbullCurve.of(intervals("72+ 72+"));
        assertEquals(1, neverStopped.at(72).orElseThrow());
        assertEquals(OptionalDouble.empty(), neverStopped.at(73));
    }

    /** Two algorithms for one thing: with known instants Turnbull's estimate is that of Kaplan and Meier. */
    @Test
    void knownInstantsGiveTheCurveOfKaplanAndMeier() {
        List<StopInterval> stops = intervals(Datasets.TREATED);
        TurnbullCurve turnbull = TurnbullCurve.of(stops);
        SurvivalCurve kaplanMeier = SurvivalCurve.of(lifetimes(stops));
        for (SurvivalCurve.Step step : kaplanMeier.steps()) {
            assertEquals(step.survival(), turnbull.at(step.time()).orElseThrow(), 1e-6);
        }
    }

    private static List<Lifetime> lifetimes(List<StopInterval> stops) {
        return stops.stream().map(stop -> new Lifetime(stop.after(), stop.stopped())).toList();
    }

    @Test
    void knownInstantsGiveTheFitsOfLifetimes() {
        List<StopInterval> stops = intervals(Datasets.TREATED);
        WeibullFit weibull = WeibullFit.of(lifetimes(stops));
        IntervalFit fit = IntervalFit.weibull(stops);
        assertEquals(weibull.shape(), fit.shape(), 1e-8);
        assertEquals(weibull.scales().get(0), fit.scale(), 1e-6);
        assertEquals(weibull.logLikelihood(), fit.logLikelihood(), 1e-9);
        // 359 weeks, 9 relapses; log-mean 3.686 in the output of the R package MASS (verified)
        assertEquals(ExponentialFit.of(lifetimes(stops)).meanTime(), IntervalFit.exponential(stops).scale(), 1e-8);
        assertEquals(3.686, Math.log(IntervalFit.exponential(stops).scale()), 1e-3);
    }

    /** The fluid of the R package survival's test output (verified): shape 0.77082, scale 12.22222. */
    @Test
    void narrowIntervalsGiveThePublishedFit() {
        List<StopInterval> stops = new ArrayList<>();
        for (String each : Datasets.FLUID_AT_34_KV.split(" ")) {
            double time = Double.parseDouble(each);
            stops.add(new StopInterval(time - 1e-4, time + 1e-4));
        }
        IntervalFit fit = IntervalFit.weibull(stops);
        assertEquals(0.77082, fit.shape(), 1e-5);
        assertEquals(12.22222, fit.scale(), 2e-5);
    }

    /** A curve that falls between the looks of all stops explains them as well as a steeper one does. */
    @ParameterizedTest
    @ValueSource(strings = {"0-6 0-6 0-6 6-42", "48-120 120-168 120-168 120-192 120-192 120-192", "24-96 24-96 24-96 24-220 24-220 96+ 96+ 96+"})
    void stopsThatEveryLargeShapeExplainsDetermineNone(String times) {
        List<StopInterval> stops = intervals(times);
        String words = assertThrows(IllegalArgumentException.class, () -> IntervalFit.weibull(stops)).getMessage();
        assertTrue(words.contains("determine no Weibull"), words);
    }

    /** Three in the first second, the others after days: powers of such times are no numbers any more, and the fit is found all the same. */
    @Test
    void stopsThatLieFarApartAreFittedLikeKnownInstants() {
        double[] times = {1e-6, 3e-5, 2e-4, 0.5, 40, 700, 1000};
        List<StopInterval> stops = Arrays.stream(times).mapToObj(time -> new StopInterval(0.999 * time, 1.001 * time)).toList();
        WeibullFit exact = WeibullFit.of(Arrays.stream(times).mapToObj(Lifetime::failedAt).toList());
        IntervalFit fit = IntervalFit.weibull(stops);
        assertEquals(exact.shape(), fit.shape(), 1e-5 * exact.shape());
        assertEquals(exact.scales().get(0), fit.scale(), 1e-5 * exact.scales().get(0));
        IntervalFit.Range limits = IntervalFit.shapeLimits(stops, 0.95);
        assertTrue(0 < limits.lower() && limits.lower() < fit.shape() && fit.shape() < limits.upper() && limits.upper() < 1, limits::toString);
    }

    /**
     * Stops found at looks every 24 h, 40 of 200, reckoned by hand: with a constant rate and equal looks the part that
     * survives from one look to the next is 1 - stops/units that were looked at, so the mean time is -24/ln(1 - 40/(200 + 180 + 168)).
     */
    @Test
    void equalLooksHaveAClosedForm() {
        List<StopInterval> stops = new ArrayList<>();
        stops.addAll(Collections.nCopies(20, new StopInterval(0, 24)));
        stops.addAll(Collections.nCopies(12, new StopInterval(24, 48)));
        stops.addAll(Collections.nCopies(8, new StopInterval(48, 72)));
        stops.addAll(Collections.nCopies(160, StopInterval.never(72)));
        double looks = 200 + 180 + 168;
        double mean = -24 / Math.log(1 - 40 / looks);
        assertEquals(mean, IntervalFit.exponential(stops).scale(), 1e-8);
        IntervalFit.Range limits = IntervalFit.meanTimeLimits(stops, 0.95);
        assertTrue(limits.lower() < mean && mean < limits.upper());
        // z = 1.96 standard errors of the log of a rate from 40 stops, about 1/sqrt(40)
        assertEquals(Math.exp(1.96 / Math.sqrt(40)), limits.upper() / mean, 0.04);
        IntervalFit.Range shape = IntervalFit.shapeLimits(stops, 0.95);
        IntervalFit fit = IntervalFit.weibull(stops);
        assertTrue(shape.lower() < fit.shape() && fit.shape() < shape.upper() && shape.upper() < 1.1, shape::toString);
        assertTrue(fit.shape() < 1, "early failures");
        assertEquals(fit.survival(72), 0.8, 5e-3);
    }

    /** The likelihood ratio of both fits of the bearings of Lieblein and Zelen, -113.69129 against -121.43392 by hand. */
    @Test
    void bearingsDoNotFailAtAConstantRate() {
        List<StopInterval> bearings = intervals(Datasets.BEARINGS);
        double mean = bearings.stream().mapToDouble(StopInterval::by).average().orElseThrow();
        double exponential = -23 * (Math.log(mean) + 1);
        GoodnessOfFit fit = GoodnessOfFit.constantRate(bearings);
        assertEquals(2 * (-113.69129 - exponential), fit.statistic(), 1e-4);
        assertTrue(fit.probability() < 1e-4);
        assertTrue(GoodnessOfFit.constantRate(intervals(Datasets.TREATED)).probability() > 0.1);
    }

    /** Quantiles of chi-squared at 95 and 90 %, NIST/SEMATECH e-Handbook 1.3.6.7.4 (from memory). */
    @ParameterizedTest
    @CsvSource({ "2, 5.9915, 0.05", "4, 9.4877, 0.05", "6, 12.5916, 0.05", "20, 31.4104, 0.05", "2, 4.6052, 0.10",
        "4, 7.7794, 0.10", "6, 10.6446, 0.10", "20, 28.4120, 0.10" })
    void probabilitiesOfAFit(int degrees, double statistic, double probability) {
        assertEquals(probability, new GoodnessOfFit(statistic, degrees).probability(), 5e-6);
    }

    @Test
    void countsAgainstExpectations() {
        GoodnessOfFit fit = GoodnessOfFit.ofCounts(List.of(22L, 18L, 20L), List.of(20.0, 20.0, 20.0), 0);
        assertEquals(0.4, fit.statistic(), 1e-12);
        assertEquals(2, fit.degreesOfFreedom());
        assertEquals(Math.exp(-0.2), fit.probability(), 1e-12);
    }

    @Test
    void refusesNonsense() {
        List<StopInterval> none = List.of();
        List<StopInterval> never = intervals("72+ 72+");
        List<StopInterval> atOnce = intervals("0-24 0-24");
        List<StopInterval> oneTime = intervals("24-48 24-48 24-48");
        assertThrows(IllegalArgumentException.class, () -> new StopInterval(-1, 2));
        assertThrows(IllegalArgumentException.class, () -> new StopInterval(2, 1));
        assertThrows(IllegalArgumentException.class, () -> new StopInterval(1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> StopInterval.at(0));
        assertThrows(IllegalArgumentException.class, () -> TurnbullCurve.of(none));
        assertThrows(IllegalArgumentException.class, () -> IntervalFit.exponential(never));
        assertThrows(IllegalArgumentException.class, () -> IntervalFit.exponential(atOnce));
        assertThrows(IllegalArgumentException.class, () -> IntervalFit.weibull(oneTime));
        assertThrows(IllegalArgumentException.class, () -> IntervalFit.meanTimeLimits(COSMESIS, 1));
        assertThrows(IllegalArgumentException.class, () -> IntervalFit.weibull(COSMESIS).survival(-1));
        assertThrows(IllegalArgumentException.class, () -> GoodnessOfFit.ofCounts(List.of(1L), List.of(5.0), 0));
        assertThrows(IllegalArgumentException.class,
                () -> GoodnessOfFit.ofCounts(List.of(1L, 2L), List.of(4.9, 6.0), 0));
        assertThrows(IllegalArgumentException.class, () -> GoodnessOfFit.ofCounts(List.of(1L, 2L), List.of(5.0), 0));
    }
}
