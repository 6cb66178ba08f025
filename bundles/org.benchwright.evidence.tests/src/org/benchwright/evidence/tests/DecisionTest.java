package org.benchwright.evidence.tests;

import static org.benchwright.core.Verdict.ACCEPTED;
import static org.benchwright.core.Verdict.REJECTED;
import static org.benchwright.core.Verdict.UNDECIDED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.evidence.Combination;
import org.benchwright.evidence.ConformityDecision;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.DecisionZones;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DecisionTest {

    private static final BigDecimal TWO = new BigDecimal("2");

    private static Quantity volts(String number) {
        return Quantity.of(number, "V");
    }

    private static final Limits SUPPLY = Limits.between(volts("23.5"), volts("24.5"));

    /** The zones of ILAC-G8:09/2019, 4.2, with w = U = 0.05 V on 23.5 .. 24.5 V; reckoned by hand. */
    @ParameterizedTest
    @CsvSource({
        "23.4499, REJECTED, REJECTED, REJECTED", "23.45, REJECTED, REJECTED, UNDECIDED",
        "23.4999, REJECTED, REJECTED, UNDECIDED", "23.5, ACCEPTED, REJECTED, UNDECIDED",
        "23.5499, ACCEPTED, REJECTED, UNDECIDED", "23.55, ACCEPTED, ACCEPTED, ACCEPTED",
        "24, ACCEPTED, ACCEPTED, ACCEPTED", "24.45, ACCEPTED, ACCEPTED, ACCEPTED",
        "24.4501, ACCEPTED, REJECTED, UNDECIDED", "24.5, ACCEPTED, REJECTED, UNDECIDED",
        "24.5001, REJECTED, REJECTED, UNDECIDED", "24.55, REJECTED, REJECTED, UNDECIDED",
        "24.5501, REJECTED, REJECTED, REJECTED" })
    void theThreeRulesDecideByTheirZones(String value, Verdict simple, Verdict guarded, Verdict bothWays) {
        assertEquals(simple, decide(value, DecisionRule.SIMPLE).outcome());
        assertEquals(guarded, decide(value, DecisionRule.GUARDED).outcome());
        assertEquals(bothWays, decide(value, DecisionRule.GUARDED_BOTH_WAYS).outcome());
    }

    private static ConformityDecision decide(String value, DecisionRule rule) {
        return ConformityDecision.decide(volts(value), SUPPLY, volts("0.05"), TWO, rule);
    }

    @Test
    void tellsWhatItRestsOn() {
        ConformityDecision decision = decide("23.52", DecisionRule.GUARDED_BOTH_WAYS);
        assertEquals("0.05 V", decision.guardBand().toString());
        assertEquals("0.02 V", decision.margin().toString());
        assertEquals("23.55 .. 24.45 V", decision.acceptanceZone().orElseThrow().toString());
        assertEquals("-0.01 V", decide("24.51", DecisionRule.SIMPLE).margin().toString());
        assertEquals("0 V", decide("24.51", DecisionRule.SIMPLE).guardBand().toString());
        // u = 0.025 V, 0.02 V inside the lower limit: Phi(0.8), the upper limit 39 u away
        assertEquals(0.788145, decision.conformanceProbability(), 1e-6);
    }

    @Test
    void decidesAlikeInWhateverUnits() {
        Limits limits = Limits.between(Quantity.of("23500", "mV"), Quantity.of("0.0245", "kV"));
        for (String unit : List.of("uV", "mV", "V", "kV")) {
            Quantity onTheEdge = volts("23.55").to(UnitOfMeasure.of(unit));
            ConformityDecision decision = ConformityDecision.decide(onTheEdge, limits, Quantity.of("50", "mV"), TWO,
                    DecisionRule.GUARDED);
            assertEquals(ACCEPTED, decision.outcome(), unit);
            assertEquals("50 mV", decision.guardBand().toString());
        }
    }

    @Test
    void decidesExactlyWhereOneUnitHasNoFiniteDecimals() {
        Limits oneHour = Limits.atMost(Quantity.of("1", "h"));
        Quantity none = Quantity.of("0", "s");
        assertEquals(ACCEPTED,
                ConformityDecision.decide(Quantity.of("3600", "s"), oneHour, none, TWO, DecisionRule.SIMPLE).outcome());
        assertEquals(REJECTED, ConformityDecision
                .decide(Quantity.of("3600.000001", "s"), oneHour, none, TWO, DecisionRule.SIMPLE).outcome());
    }

    @Test
    void temperaturesHaveTheirUncertaintyInKelvin() {
        Limits room = Limits.between(Quantity.of("18", "degC"), Quantity.of("28", "degC"));
        ConformityDecision decision = ConformityDecision.decide(Quantity.of("291.65", "K"), room,
                Quantity.of("500", "mK"), TWO, DecisionRule.GUARDED);
        assertEquals(ACCEPTED, decision.outcome());
        assertEquals("0.5 K", decision.margin().toString());
        assertEquals("18.5 .. 27.5 degC", decision.acceptanceZone().orElseThrow().toString());
        assertThrows(IllegalArgumentException.class, () -> ConformityDecision.decide(Quantity.of("20", "degC"), room,
                Quantity.of("0.5", "degC"), TWO, DecisionRule.GUARDED));
    }

    @Test
    void guardBandsThatMeetAcceptNothing() {
        Limits tight = Limits.between(volts("23.95"), volts("24.04"));
        ConformityDecision guarded = ConformityDecision.decide(volts("24"), tight, volts("0.05"), TWO,
                DecisionRule.GUARDED);
        assertEquals(REJECTED, guarded.outcome());
        assertEquals(Optional.empty(), guarded.acceptanceZone());
        assertEquals(UNDECIDED, ConformityDecision
                .decide(volts("24"), tight, volts("0.05"), TWO, DecisionRule.GUARDED_BOTH_WAYS).outcome());
        // bands that touch leave one point
        Limits touching = Limits.between(volts("23.95"), volts("24.05"));
        ConformityDecision onThePoint = ConformityDecision.decide(volts("24"), touching, volts("0.05"), TWO,
                DecisionRule.GUARDED);
        assertEquals(ACCEPTED, onThePoint.outcome());
        assertEquals("24.00 .. 24.00 V", onThePoint.acceptanceZone().orElseThrow().toString());
    }

    @Test
    void oneSidedLimitsHaveOneZone() {
        Limits residual = Limits.atMost(volts("5"));
        assertEquals(ACCEPTED, decideOne("4.95", residual));
        assertEquals(UNDECIDED, decideOne("4.951", residual));
        assertEquals(REJECTED, decideOne("5.051", residual));
        assertEquals(ACCEPTED, decideOne("-1000", residual));
        Limits enough = Limits.atLeast(volts("11"));
        assertEquals(ACCEPTED, decideOne("1000000", enough));
        assertEquals(REJECTED, decideOne("10.949", enough));
    }

    private static Verdict decideOne(String value, Limits limits) {
        return ConformityDecision.decide(volts(value), limits, volts("0.05"), TWO, DecisionRule.GUARDED_BOTH_WAYS)
                .outcome();
    }

    @Test
    void refusesNonsense() {
        Limits inverted = Limits.between(volts("2"), volts("1"));
        assertThrows(IllegalArgumentException.class,
                () -> ConformityDecision.decide(volts("1"), inverted, volts("0"), TWO, DecisionRule.SIMPLE));
        assertThrows(IllegalArgumentException.class,
                () -> ConformityDecision.decide(volts("1"), SUPPLY, volts("-0.1"), TWO, DecisionRule.SIMPLE));
        assertThrows(IllegalArgumentException.class, () -> ConformityDecision.decide(Quantity.of("1", "A"), SUPPLY,
                volts("0.1"), TWO, DecisionRule.SIMPLE));
        assertThrows(IllegalArgumentException.class, () -> ConformityDecision.decide(volts("1"), SUPPLY,
                Quantity.of("0.1", "A"), TWO, DecisionRule.SIMPLE));
        assertThrows(IllegalArgumentException.class,
                () -> ConformityDecision.decide(volts("1"), SUPPLY, volts("0.1"), BigDecimal.ZERO, DecisionRule.GUARDED));
        assertThrows(IllegalArgumentException.class, () -> new DecisionZones(Optional.empty(), Optional.of(TWO),
                BigDecimal.ONE, DecisionRule.SIMPLE));
        assertThrows(IllegalArgumentException.class, () -> DecisionZones.of(Optional.empty(), Optional.empty(),
                BigDecimal.ONE, DecisionRule.GUARDED));
    }

    @Test
    void theMeanOfTheReadingsDecides() {
        ConformityDecision decision = combine(Combination.MEAN, "23.52", "23.60");
        assertEquals(ACCEPTED, decision.outcome());
        assertEquals("23.56 V", decision.value().toString());
        assertEquals(UNDECIDED, combine(Combination.MEAN, "23.52", "23.55", "23.57").outcome());
        assertEquals(REJECTED, combine(Combination.MEAN, "23.46", "23.40").outcome());
        assertEquals("23.55 V", Combination.MEAN.decide(List.of(volts("23.5"), Quantity.of("23600", "mV")), SUPPLY,
                volts("0.05"), TWO, DecisionRule.GUARDED).value().to(UnitOfMeasure.of("V"))
                .toString());
    }

    @Test
    void bothInsideAcceptsReadingsInTheBandAndNeverRejectsAMixture() {
        assertEquals(ACCEPTED, combine(Combination.BOTH_INSIDE, "23.52", "23.5").outcome());
        assertEquals(UNDECIDED, combine(Combination.BOTH_INSIDE, "23.52", "23.4").outcome());
        assertEquals(UNDECIDED, combine(Combination.BOTH_INSIDE, "23.48", "24").outcome());
        assertEquals(REJECTED, combine(Combination.BOTH_INSIDE, "23.48", "23.49").outcome());
        assertEquals(UNDECIDED, combine(Combination.BOTH_INSIDE, "23.52").outcome());
        Limits tight = Limits.between(volts("23.95"), volts("24.04"));
        assertEquals(UNDECIDED, Combination.BOTH_INSIDE.decide(List.of(volts("24"), volts("24")), tight, volts("0.05"),
                TWO, DecisionRule.GUARDED_BOTH_WAYS).outcome());
    }

    @Test
    void theLastReadingDecidesAlone() {
        assertEquals(ACCEPTED, combine(Combination.LAST, "23.1", "24").outcome());
        assertEquals(REJECTED, combine(Combination.LAST, "24", "23.1").outcome());
        assertThrows(IllegalArgumentException.class, () -> combine(Combination.LAST));
    }

    private static ConformityDecision combine(Combination combination, String... readings) {
        return combination.decide(List.of(readings).stream().map(DecisionTest::volts).toList(), SUPPLY, volts("0.05"),
                TWO, DecisionRule.GUARDED_BOTH_WAYS);
    }

    @ParameterizedTest
    @EnumSource(DecisionRule.class)
    void rulesAreFoundByTheirWords(DecisionRule rule) {
        assertEquals(Optional.of(rule), DecisionRule.find(rule.word()));
        assertEquals(rule == DecisionRule.SIMPLE, !rule.isGuarded());
        assertFalse(rule.word().contains("_"));
    }

    @ParameterizedTest
    @EnumSource(Combination.class)
    void combinationsAreFoundByTheirWords(Combination combination) {
        assertEquals(Optional.of(combination), Combination.find(combination.word()));
        assertTrue(Combination.find("average").isEmpty());
    }
}
