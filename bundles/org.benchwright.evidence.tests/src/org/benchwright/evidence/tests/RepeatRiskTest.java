package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.MeasurementRisk;
import org.benchwright.evidence.RepeatRisk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** No published values were found for this arrangement; it is judged by special cases and by playing it through. */
class RepeatRiskTest {

    private static final OptionalDouble NONE = OptionalDouble.empty();
    private static final OptionalDouble ZERO = OptionalDouble.of(0);

    private static RepeatRisk oneSided(double commonShare, int readings, Combination combination) {
        return new RepeatRisk(ZERO, NONE, 2, 1, commonShare, readings, combination);
    }

    @ParameterizedTest
    @EnumSource(Combination.class)
    void withoutRepeatsItIsTheWorstCaseOfTheGuardBand(Combination combination) {
        for (double share : new double[] { 0, 0.3, 1 }) {
            assertEquals(MeasurementRisk.worstCase(1), oneSided(share, 1, combination).worstFalseAccept(), 1e-12);
        }
    }

    @ParameterizedTest
    @EnumSource(Combination.class)
    void repeatingNeverLowersTheRiskAndASharedErrorTakesTheEffectAway(Combination combination) {
        double before = 0;
        for (int readings = 1; readings <= 5; readings++) {
            double risk = oneSided(0.2, readings, combination).worstFalseAccept();
            assertTrue(risk >= before, combination + " with " + readings);
            before = risk;
        }
        assertTrue(before > 1.05 * MeasurementRisk.worstCase(1));
        double allShared = oneSided(1, 5, combination).worstFalseAccept();
        double expected = combination == Combination.BOTH_INSIDE ? 0.5 : MeasurementRisk.worstCase(1);
        assertEquals(expected, allShared, 1e-9);
        assertEquals(allShared, oneSided(0.999, 5, combination).worstFalseAccept(), 0.02);
    }

    @Test
    void twoFreshReadingsByHand() {
        // accepted at once: 1 - Phi(2); undecided: Phi(2) - Phi(-2)
        double atOnce = 0.022750131948179;
        double undecided = 1 - 2 * atOnce;
        assertEquals(atOnce + undecided * atOnce, oneSided(0, 2, Combination.LAST).worstFalseAccept(), 1e-12);
        assertEquals(atOnce + (0.5 - atOnce) * 0.5, oneSided(0, 2, Combination.BOTH_INSIDE).worstFalseAccept(), 1e-12);
    }

    /** Plays the arrangement through with the very decisions that a bench takes. */
    @ParameterizedTest
    @CsvSource({ "MEAN, 0, 2", "MEAN, 0, 4", "MEAN, 0.5, 3", "LAST, 0.5, 3", "BOTH_INSIDE, 0.3, 2", "BOTH_INSIDE, 0.3, 4" })
    void agreesWithPlayingItThrough(Combination combination, double commonShare, int readings) {
        RepeatRisk narrow = new RepeatRisk(OptionalDouble.of(-2.5), OptionalDouble.of(2.5), 1, 0.5, commonShare, readings,
                combination);
        for (double trueValue : new double[] { 2.5, 1.6, 3 }) {
            double played = play(narrow, trueValue, 4_000);
            double reckoned = narrow.acceptance(trueValue);
            double deviation = Math.sqrt(Math.max(reckoned * (1 - reckoned), 1e-4) / 4_000);
            assertEquals(reckoned, played, 4 * deviation, () -> combination + " at " + trueValue);
        }
    }

    @ParameterizedTest
    @CsvSource({ "MEAN, 0, 2", "MEAN, 0.5, 3", "LAST, 0.5, 3", "BOTH_INSIDE, 0.3, 2", "BOTH_INSIDE, 0.3, 4" })
    void rejectionAgreesWithPlayingItThrough(Combination combination, double commonShare, int readings) {
        RepeatRisk narrow = new RepeatRisk(OptionalDouble.of(-2.5), OptionalDouble.of(2.5), 1, 0.5, commonShare, readings,
                combination);
        for (double trueValue : new double[] { 2.5, 3.6 }) {
            double played = play(narrow, trueValue, 1_500, Verdict.REJECTED);
            double reckoned = narrow.rejection(trueValue);
            double deviation = Math.sqrt(Math.max(reckoned * (1 - reckoned), 1e-4) / 1_500);
            assertEquals(reckoned, played, 4 * deviation, () -> combination + " at " + trueValue);
        }
    }

    /** On a single limit both sides are alike. */
    @ParameterizedTest
    @EnumSource(Combination.class)
    void aUnitOnTheLimitIsRejectedAsOftenAsAccepted(Combination combination) {
        for (int readings = 1; readings <= 4; readings++) {
            RepeatRisk limit = oneSided(0.5, readings, combination);
            assertEquals(limit.worstFalseAccept(), limit.worstFalseReject(), 1e-9);
        }
    }

    @Test
    void bandsThatMeetAcceptNothing() {
        for (Combination combination : Combination.values()) {
            RepeatRisk tight = new RepeatRisk(OptionalDouble.of(-0.5), OptionalDouble.of(0.5), 1, 0.5, 0, 1, combination);
            assertEquals(0, tight.acceptance(0));
        }
        assertEquals(0, new RepeatRisk(OptionalDouble.of(-0.5), OptionalDouble.of(0.5), 1, 0.5, 0, 3, Combination.MEAN)
                .acceptance(0));
        assertEquals(0, new RepeatRisk(OptionalDouble.of(-0.5), OptionalDouble.of(0.5), 1, 0.5, 0, 3,
                Combination.BOTH_INSIDE).acceptance(0));
    }

    @Test
    void refusesNonsense() {
        assertThrows(IllegalArgumentException.class, () -> oneSided(-0.1, 2, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> oneSided(Double.NaN, 2, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> oneSided(0, 0, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> oneSided(0, 21, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> new RepeatRisk(NONE, NONE, 2, 1, 0, 2, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> new RepeatRisk(ZERO, NONE, -1, 1, 0, 2, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> new RepeatRisk(ZERO, NONE, 2, 0, 0, 2, Combination.MEAN));
        assertThrows(IllegalArgumentException.class, () -> oneSided(0, 2, Combination.MEAN).acceptance(Double.NaN));
    }

    private static double play(RepeatRisk risk, double trueValue, int games) {
        return play(risk, trueValue, games, Verdict.ACCEPTED);
    }

    private static double play(RepeatRisk risk, double trueValue, int games, Verdict wanted) {
        Random random = new Random(42);
        int found = 0;
        for (int game = 0; game < games; game++) {
            double common = trueValue
                    + random.nextGaussian() * risk.standardUncertainty() * Math.sqrt(risk.commonShare());
            found += oneGame(risk, common, random) == wanted ? 1 : 0;
        }
        return (double) found / games;
    }

    static Verdict oneGame(RepeatRisk risk, double common, Random random) {
        Limits limits = Limits.between(volts(risk.lower().getAsDouble()), volts(risk.upper().getAsDouble()));
        double fresh = risk.standardUncertainty() * Math.sqrt(1 - risk.commonShare());
        List<Quantity> readings = new ArrayList<>();
        Verdict outcome = Verdict.UNDECIDED;
        while (outcome == Verdict.UNDECIDED && readings.size() < risk.mostReadings()) {
            readings.add(volts(common + random.nextGaussian() * fresh));
            outcome = risk.combination().decide(readings, limits, volts(risk.guardBand()), new BigDecimal("2"),
                    DecisionRule.GUARDED_BOTH_WAYS).outcome();
        }
        return outcome;
    }

    private static Quantity volts(double number) {
        return new Quantity(new BigDecimal(number).setScale(9, RoundingMode.HALF_EVEN), UnitOfMeasure.of("V"));
    }
}
