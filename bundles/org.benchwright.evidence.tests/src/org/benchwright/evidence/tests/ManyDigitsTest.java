package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

import org.benchwright.evidence.AnalysisOfVariance;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.Drift;
import org.benchwright.evidence.GoodnessOfFit;
import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.MeasurementRisk;
import org.benchwright.evidence.SuccessRun;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.evidence.Uncertainty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where binary fractions, sums of them or one minus something small would make of a plain case another one. */
class ManyDigitsTest {

    private static final double NORMAL_975 = 1.959963984540054;

    /** Of 2k units that fail one after the other, half are left after the k-th. */
    @ParameterizedTest
    @ValueSource(ints = {2, 14, 22, 24, 28, 30, 46, 62, 78})
    void theMedianOfAnEvenNumberIsItsMiddle(int units) {
        SurvivalCurve curve = SurvivalCurve.of(IntStream.rangeClosed(1, units).mapToObj(Lifetime::failedAt).toList());
        assertEquals(OptionalDouble.of(units / 2.0), curve.median());
    }

    /** 0.9 squared is 0.81 and so on: so many clean trials prove just this, and one trial fewer does not. */
    @ParameterizedTest
    @CsvSource({"0.9, 0.19, 2", "0.9, 0.271, 3", "0.9, 0.3439, 4", "0.8, 0.36, 2", "0.8, 0.488, 3", "0.9, 0.1, 1", "0.1, 0.9, 1", "0.5, 0.75, 2",
            "0.9, 0.1901, 3"})
    void aProofThatJustSucceedsNeedsNoTrialMore(double reliability, double confidence, int trials) {
        assertEquals(trials, SuccessRun.CLASSIC.trials(reliability, confidence));
        assertEquals(trials - 1, SuccessRun.UNIFORM_PRIOR.trials(reliability, confidence));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.2, 0.3, 0.7, 5.05, 24.1})
    void readingsThatAreAllAlikeShowNothing(double reading) {
        List<Double> few = Collections.nCopies(3, reading);
        List<Double> many = Collections.nCopies(24, reading);
        for (AnalysisOfVariance analysis : List.of(AnalysisOfVariance.of(List.of(many, few)), AnalysisOfVariance.of(List.of(few, List.of(reading))),
                AnalysisOfVariance.of(List.of(Collections.nCopies(2, reading), List.of(reading))))) {
            assertEquals(0, analysis.statistic());
            assertEquals(1, analysis.probability());
            assertEquals(0, analysis.explained());
        }
        ControlChart chart = ControlChart.individuals(many);
        assertEquals(List.of(reading, reading, reading), List.of(chart.lower(), chart.centre(), chart.upper()));
        assertEquals(List.of(), chart.signals());
        assertEquals(List.of(), ControlChart.means(Collections.nCopies(12, Collections.nCopies(11, reading))).signals());
        assertEquals(0, Drift.of(IntStream.range(0, 24).mapToObj(day -> (double) day * day).toList(), many).slope());
    }

    /** Student's quantile lies (z&sup3; + z)/4&nu; above the normal one, Abramowitz and Stegun, 26.7.5: 2.37/&nu; at 1.96. */
    @ParameterizedTest
    @ValueSource(doubles = {1e6, 1e8, 1e10, 1e12, 9e14, 3.7e16, 6.2e22, 1e300})
    void anUncertaintyThatIsAlmostKnownIsCoveredLikeOneThatIs(double degrees) {
        assertEquals(NORMAL_975, new Uncertainty(1, degrees).coverageFactor(0.95), 2.4 / degrees + 1e-12);
        assertEquals(0.02275013194817921, MeasurementRisk.worstCaseOfFewReadings(2, degrees), 0.14 / degrees + 1e-12);
        assertEquals(NORMAL_975, MeasurementRisk.guardBandOfFewReadings(0.025, degrees), 2.4 / degrees + 1e-12);
    }

    /** Upper incomplete gamma function, reckoned with 30 digits by mpmath; the first is the table's 5 %. */
    @ParameterizedTest
    @CsvSource({"3.841458820694124, 1, 0.05", "100, 1, 1.523970604832105e-23", "149.3914474983854, 19, 2.871517787310265e-22",
            "264.8088964346518, 5, 3.644241544534284e-55"})
    void aVeryPoorFitKeepsItsDigits(double statistic, int degrees, double probability) {
        assertEquals(probability, new GoodnessOfFit(statistic, degrees).probability(), 1e-9 * probability);
    }

    /** Two groups far apart, F with 1 and 4 degrees of freedom: incomplete beta function, reckoned with 30 digits by mpmath. */
    @ParameterizedTest
    @CsvSource({"100, 2.66548189616359e-8", "10000, 2.66666654814815e-16"})
    void aVeryLargeDifferenceKeepsItsDigits(double apart, double probability) {
        AnalysisOfVariance analysis = AnalysisOfVariance.of(List.of(List.of(-1.0, 0.0, 1.0), List.of(apart - 1, apart, apart + 1)));
        assertEquals(1.5 * apart * apart, analysis.statistic(), 1e-9 * apart * apart);
        assertEquals(probability, analysis.probability(), 1e-9 * probability);
    }
}
