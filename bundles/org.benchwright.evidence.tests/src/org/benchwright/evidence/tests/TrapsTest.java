package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.benchwright.evidence.ChartConstants;
import org.benchwright.evidence.ControlChart;
import org.benchwright.evidence.MeasurementRisk;
import org.benchwright.evidence.Proportion;
import org.benchwright.evidence.SamplingPlan;
import org.benchwright.evidence.SuccessRun;
import org.benchwright.evidence.Uncertainty;
import org.junit.jupiter.api.Test;

/** Where printed and exact values differ: which of them this bundle gives, and how far off the other is. */
class TrapsTest {

    /** JCGM 100:2008, H.1.6 prints 16.7, which comes from unrounded contributions; from the printed ones it is 17.5. */
    @Test
    void degreesOfFreedomOfTheEndGaugeNeedUnroundedContributions() {
        Uncertainty printed = Uncertainty.combined(List.of(new Uncertainty(25, 18), new Uncertainty(9.7, 25.6),
                new Uncertainty(2.9, 50), new Uncertainty(16.6, 2)));
        double withPrintedSum = Math.pow(32, 4) / (Math.pow(25, 4) / 18 + Math.pow(9.7, 4) / 25.6 + Math.pow(2.9, 4) / 50
                + Math.pow(16.6, 4) / 2);
        assertEquals(17.5, withPrintedSum, 0.05);
        assertEquals(16.7, printed.degreesOfFreedom(), 0.1);
        assertEquals(16, Math.floor(printed.degreesOfFreedom()), "either way the quantile is that of 16 or 17");
    }

    /** D4(5) is printed 2.114 and 2.115, D4(3) 2.574 and 2.575, c4(9) .9693 and .9694, d2(12) 3.258 and 3.259. */
    @Test
    void chartConstantsAreExactBetweenTheirPrintings() {
        // reckoned a second time by another rule of integration: 2.11450, so that both printings are a half away
        assertEquals(2.1145, ChartConstants.of(5).upperRangeFactor(), 2e-5);
        assertEquals(2.5746, ChartConstants.of(3).upperRangeFactor(), 5e-5);
        assertEquals(.96931, ChartConstants.of(9).c4(), 5e-6);
        double d2 = ChartConstants.of(12).d2();
        assertTrue(3.258 < d2 && d2 < 3.259, () -> "d2(12) " + d2);
        assertEquals(3.07751, ChartConstants.of(10).d2(), 5e-6);
        assertEquals(.37253, ChartConstants.of(8).a2(), 5e-6);
    }

    /** The individuals chart of the e-Handbook 6.3.2.2: 55.8041 with d2 = 1.128, 55.8024 exactly, 55.8049 with 2.66. */
    @Test
    void individualsLimitsDependOnTheRoundingOfTheFactor() {
        double range = ControlChart.movingRange(Datasets.BATCHES).centre();
        assertEquals(55.8041, 50.81 + 3 * range / 1.128, 5e-5);
        assertEquals(55.8049, 50.81 + 2.66 * range, 5e-5);
        assertEquals(55.8024, ControlChart.individuals(Datasets.BATCHES).upper(), 5e-5);
    }

    /** e-Handbook 6.2.3.2 is recalled with .845 and .739 at 4 and 5 %; the binomial gives .846 and .738. */
    @Test
    void theOperatingCurveOfNistIsOffByAThousandth() {
        assertEquals(.845, new SamplingPlan(52, 3).probabilityOfAcceptance(0.04), 1.1e-3);
        assertEquals(.739, new SamplingPlan(52, 3).probabilityOfAcceptance(0.05), 1.1e-3);
        assertEquals(.846, new SamplingPlan(52, 3).probabilityOfAcceptance(0.04), 5e-4);
        assertEquals(.738, new SamplingPlan(52, 3).probabilityOfAcceptance(0.05), 5e-4);
    }

    /** ILAC-G8 says "below 2.5 %" for w = U: with U = 2u it is 2.275 %, with k = 1.96 it is 2.5 %. */
    @Test
    void belowTwoAndAHalfPercentDependsOnTheCoverageFactor() {
        assertEquals(0.02275, MeasurementRisk.worstCase(1, 2), 5e-6);
        assertEquals(0.025, MeasurementRisk.worstCase(1, 1.959964), 1e-7);
    }

    /** e-Handbook 7.2.4.1 is recalled with .401029; exact is .4010281. */
    @Test
    void theExactLimitOfNistEndsInAnotherDigit() {
        assertEquals(0.4010281, new Proportion(4, 20).clopperPearson(0.90).upper(), 5e-8);
    }

    /** Both conventions count one trial differently and are never given for each other. */
    @Test
    void successRunsNameTheirConvention() {
        assertEquals(List.of("CLASSIC", "UNIFORM_PRIOR"), List.of(SuccessRun.values()).stream().map(Enum::name).toList());
        assertNotEquals(SuccessRun.CLASSIC.trials(0.9, 0.9), SuccessRun.UNIFORM_PRIOR.trials(0.9, 0.9));
    }
}
