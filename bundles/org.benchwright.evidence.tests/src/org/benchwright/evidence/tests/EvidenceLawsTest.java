package org.benchwright.evidence.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

import org.benchwright.core.Verdict;
import org.benchwright.evidence.DecisionRule;
import org.benchwright.evidence.DecisionZones;
import org.benchwright.evidence.MeasurementRisk;
import org.benchwright.evidence.Proportion;
import org.benchwright.evidence.Soak;
import org.benchwright.evidence.Soak.End;
import org.benchwright.evidence.SuccessRun;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class EvidenceLawsTest implements PropertyTest {

    /** Limits, one side perhaps open, and an uncertainty. */
    record Case(Optional<BigDecimal> lower, Optional<BigDecimal> upper, BigDecimal uncertainty) {

        DecisionZones by(DecisionRule rule) {
            return DecisionZones.of(lower, upper, uncertainty, rule);
        }
    }

    @Provide
    Arbitrary<BigDecimal> values() {
        return Arbitraries.bigDecimals().between(new BigDecimal("-30"), new BigDecimal("30")).ofScale(2);
    }

    @Provide
    Arbitrary<Case> cases() {
        Arbitrary<BigDecimal> sizes = Arbitraries.bigDecimals().between(BigDecimal.ZERO, BigDecimal.TEN).ofScale(2);
        return Combinators.combine(values(), sizes, sizes, Arbitraries.of(1, 2, 3)).as((from, width, uncertainty, sides) ->
                new Case(sides == 2 ? Optional.empty() : Optional.of(from),
                        sides == 1 ? Optional.empty() : Optional.of(from.add(width)), uncertainty));
    }

    @Property
    void whatAStricterRuleAcceptsAMilderOneAcceptsToo(@ForAll("cases") Case given, @ForAll("values") BigDecimal value) {
        Verdict simple = given.by(DecisionRule.SIMPLE).decide(value);
        Verdict guarded = given.by(DecisionRule.GUARDED).decide(value);
        Verdict bothWays = given.by(DecisionRule.GUARDED_BOTH_WAYS).decide(value);
        assertEquals(guarded == Verdict.ACCEPTED, bothWays == Verdict.ACCEPTED);
        if (guarded == Verdict.ACCEPTED) {
            assertEquals(Verdict.ACCEPTED, simple);
        }
        if (bothWays == Verdict.REJECTED) {
            assertEquals(Verdict.REJECTED, simple);
            assertEquals(Verdict.REJECTED, guarded);
        }
        assertTrue(simple != Verdict.UNDECIDED && guarded != Verdict.UNDECIDED);
    }

    @Property
    void decisionsGetNoBetterOnTheWayOut(@ForAll("cases") Case given, @ForAll("values") BigDecimal one,
            @ForAll("values") BigDecimal other) {
        for (DecisionRule rule : DecisionRule.values()) {
            DecisionZones zones = given.by(rule);
            BigDecimal inner = zones.margin(one).compareTo(zones.margin(other)) >= 0 ? one : other;
            BigDecimal outer = inner == one ? other : one;
            assertTrue(goodness(zones.decide(inner)) >= goodness(zones.decide(outer)));
        }
    }

    @Property
    void aSmallerUncertaintyTakesNoAcceptanceAway(@ForAll("cases") Case given, @ForAll("values") BigDecimal value) {
        Case better = new Case(given.lower(), given.upper(), given.uncertainty().divide(new BigDecimal(2)));
        for (DecisionRule rule : DecisionRule.values()) {
            if (given.by(rule).decide(value) == Verdict.ACCEPTED) {
                assertEquals(Verdict.ACCEPTED, better.by(rule).decide(value));
            }
        }
    }

    @Property
    void anEmptyAcceptanceZoneAcceptsNothing(@ForAll("cases") Case given, @ForAll("values") BigDecimal value) {
        DecisionZones zones = given.by(DecisionRule.GUARDED_BOTH_WAYS);
        boolean inside = zones.acceptanceLower().map(limit -> limit.compareTo(value) <= 0).orElse(true)
                && zones.acceptanceUpper().map(limit -> limit.compareTo(value) >= 0).orElse(true);
        assertEquals(inside && !zones.nothingAccepted(), zones.decide(value) == Verdict.ACCEPTED);
    }

    private static int goodness(Verdict verdict) {
        return switch (verdict) {
            case ACCEPTED -> 2;
            case UNDECIDED -> 1;
            case REJECTED -> 0;
        };
    }

    @Property
    void riskAndConformanceAddUpToOne(@ForAll @DoubleRange(min = -20, max = 20) double value,
            @ForAll @DoubleRange(min = 0.01, max = 10) double uncertainty) {
        OptionalDouble lower = OptionalDouble.of(-5);
        OptionalDouble upper = OptionalDouble.of(5);
        double conformance = MeasurementRisk.conformanceProbability(value, uncertainty, lower, upper);
        double risk = MeasurementRisk.specificFalseAccept(value, uncertainty, lower, upper);
        assertEquals(1, conformance + risk, 1e-12);
        assertEquals(conformance, MeasurementRisk.conformanceProbability(-value, uncertainty, lower, upper), 1e-12);
    }

    @Property
    void boundsFallWithConfidenceAndWithStops(@ForAll @DoubleRange(min = 0.01, max = 0.98) double confidence,
            @ForAll @IntRange(min = 0, max = 60) int stops, @ForAll @DoubleRange(min = 1, max = 1e6) double total) {
        double bound = Soak.lowerBound(total, stops, confidence, End.AT_A_TIME);
        assertTrue(Soak.lowerBound(total, stops, confidence + 0.01, End.AT_A_TIME) < bound);
        assertTrue(Soak.lowerBound(total, stops + 1, confidence, End.AT_A_TIME) < bound);
        assertTrue(Soak.lowerBound(total, stops + 1, confidence, End.AT_A_STOP) >= bound * (1 - 1e-9));
        assertEquals(2 * bound, Soak.lowerBound(2 * total, stops, confidence, End.AT_A_TIME), 1e-6 * bound);
        assertEquals(confidence, Soak.demonstratedConfidence(total, stops, bound), 1e-9);
        assertEquals(total, Soak.totalTimeFor(bound, stops, confidence), 1e-9 * total);
    }

    @Property
    void limitsOfHigherConfidenceHoldThoseOfLower(@ForAll @DoubleRange(min = 0.01, max = 0.98) double confidence,
            @ForAll @IntRange(min = 1, max = 60) int stops) {
        for (End end : End.values()) {
            Soak.MeanTime inner = Soak.limits(100, stops, confidence, end);
            Soak.MeanTime outer = Soak.limits(100, stops, confidence + 0.01, end);
            assertTrue(outer.lower() < inner.lower());
            assertTrue(inner.lower() < inner.upper().orElseThrow());
            assertTrue(inner.upper().orElseThrow() < outer.upper().orElseThrow());
        }
    }

    @Property
    void theLongestMeanTimeRevealedIsRevealedJustSo(@ForAll @DoubleRange(min = 0.1, max = 1000) double length,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double confidence) {
        double meanTime = Soak.longestMeanTimeRevealed(length, confidence);
        assertEquals(confidence, Soak.detectionProbability(length, meanTime), 1e-12);
        assertEquals(length, Soak.lengthFor(meanTime, confidence), 1e-9 * length);
    }

    @Property
    void successRunsAreTheFewest(@ForAll @DoubleRange(min = 0.2, max = 0.99) double reliability,
            @ForAll @DoubleRange(min = 0.05, max = 0.99) double confidence, @ForAll @IntRange(min = 0, max = 5) int failures) {
        for (SuccessRun rule : SuccessRun.values()) {
            int trials = rule.trials(reliability, confidence, failures);
            assertTrue(rule.trials(reliability, confidence, failures + 1) > trials);
            if (failures == 0) {
                assertTrue(rule.reliability(trials, confidence) >= reliability - 1e-12);
                assertTrue(trials == 0 || rule.reliability(trials - 1, confidence) < reliability + 1e-12);
            }
        }
    }

    @Property
    void proportionIntervalsNestAndMirror(@ForAll @IntRange(min = 1, max = 300) int of,
            @ForAll @DoubleRange(min = 0, max = 1) double part, @ForAll @DoubleRange(min = 0.5, max = 0.98) double confidence) {
        long hits = Math.round(of * part);
        Proportion proportion = new Proportion(hits, of);
        Proportion.Interval exact = proportion.clopperPearson(confidence);
        Proportion.Interval wider = proportion.clopperPearson(confidence + 0.01);
        Proportion.Interval score = proportion.wilson(confidence);
        double estimate = proportion.estimate();
        assertTrue(exact.lower() <= estimate && estimate <= exact.upper());
        assertTrue(score.lower() <= estimate + 1e-15 && estimate <= score.upper() + 1e-15);
        assertTrue(wider.lower() <= exact.lower() && exact.upper() <= wider.upper());
        Proportion.Interval mirrored = new Proportion(of - hits, of).clopperPearson(confidence);
        assertEquals(1 - exact.upper(), mirrored.lower(), 1e-12);
        assertTrue(0 <= exact.lower() && exact.upper() <= 1 && 0 <= score.lower() && score.upper() <= 1);
    }
}
