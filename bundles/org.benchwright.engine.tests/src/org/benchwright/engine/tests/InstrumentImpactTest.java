package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.InstrumentError;
import org.benchwright.engine.record.InstrumentImpact;
import org.benchwright.engine.record.InstrumentImpact.Wrong;
import org.benchwright.engine.record.Replay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tests decided again with what an instrument should have read: 23.5 .. 24.5 V, both readings 24.0 V. */
class InstrumentImpactTest {

    private final TestRun run = Signing.good().run();
    private final Instant begin = run.events().get(0).moment().instant();

    private Wrong wrong(InstrumentError error) {
        return new Wrong("M-102", error, begin, begin.plus(Duration.ofDays(1)));
    }

    private static InstrumentError high(String number, String unit) {
        return new InstrumentError.Offset(Quantity.of(number, unit));
    }

    @ParameterizedTest
    @CsvSource({"0.1,V,23.9 V,ACCEPTED", "-0.1,V,24.1 V,ACCEPTED", "0.6,V,23.4 V,REJECTED", "-600,mV,24.6 V,REJECTED", "600,mV,23.4 V,REJECTED"})
    void anOffsetIsTakenOffEveryReading(String number, String unit, String right, Verdict verdict) {
        InstrumentImpact impact = InstrumentImpact.of(run, Map.of(), wrong(high(number, unit))).orElseThrow();
        assertEquals(2, impact.readings());
        Replay replay = impact.replay().orElseThrow();
        assertEquals(Optional.of(verdict), replay.verdict());
        assertEquals(right, replay.changes().get(0).now().numbers().orElseThrow().value());
    }

    @ParameterizedTest
    @CsvSource({"0.3,24.00,23.928215", "-0.3,24.00,24.072217", "-0.3,24.45,24.523571"})
    void aGainIsDividedOut(String percent, String read, String right) {
        InstrumentError error = new InstrumentError.Gain(new BigDecimal(percent));
        Quantity corrected = error.corrected(Quantity.of(read, "V")).orElseThrow();
        assertEquals(Quantity.of(right, "V"), corrected);
        InstrumentImpact impact = InstrumentImpact.of(run, Map.of(), wrong(error)).orElseThrow();
        assertEquals(Optional.of(Verdict.ACCEPTED), impact.replay().orElseThrow().verdict());
    }

    @Test
    void anotherInstrumentOrAnotherTimeIsNotTouched() {
        InstrumentError error = high("0.6", "V");
        assertEquals(Set.of("M-102"), InstrumentImpact.assets(run));
        Instant later = begin.plus(Duration.ofDays(1));
        assertEquals(Optional.empty(), InstrumentImpact.of(run, Map.of(), new Wrong("M-103", error, begin, later)));
        assertEquals(Optional.empty(), InstrumentImpact.of(run, Map.of(), new Wrong("M-102", error, later, later.plus(Duration.ofDays(1)))));
        assertTrue(InstrumentImpact.of(run, Map.of(), new Wrong("m-102", error, begin, later)).isPresent(), "letter case is no matter");
    }

    @Test
    void anErrorOfAnotherKindOfQuantityLeavesReadingsAsTheyAre() {
        InstrumentImpact impact = InstrumentImpact.of(run, Map.of(), wrong(high("2", "mA"))).orElseThrow();
        assertEquals(new InstrumentImpact(0, 2, Optional.empty()), impact);
    }

    @Test
    void whatWasAmendedIsCorrectedFromWhatIsRight() {
        long volts = Signing.event(run, Observation.Measured.class, "volts");
        Map<Long, Fact> amended = Map.of(volts, Answers.volts("volts", "24.4"));
        Replay replay = InstrumentImpact.of(run, amended, wrong(high("-0.2", "V"))).orElseThrow().replay().orElseThrow();
        assertEquals("24.6 V", replay.changes().get(0).now().numbers().orElseThrow().value());
        assertEquals(Optional.of(Verdict.REJECTED), replay.verdict());
    }

    @Test
    void aReadingOnceMoreAfterASlipIsCorrectedInItsStepAndTheSlipIsNot() {
        TestRun slipped = Signing.slipped().run();
        InstrumentImpact impact = InstrumentImpact.of(slipped, Map.of(), wrong(high("0.6", "V"))).orElseThrow();
        assertEquals(1, impact.readings());
        assertEquals(Optional.of(Verdict.REJECTED), impact.replay().orElseThrow().verdict());
    }

    @Test
    void aPointOnAScaleIsNoErrorAndNothingReadsLowerThanNothing() {
        assertThrows(IllegalArgumentException.class, () -> high("2", "degC"));
        assertThrows(IllegalArgumentException.class, () -> new InstrumentError.Gain(BigDecimal.valueOf(-100)));
        assertEquals(Optional.of(Quantity.of("20", "degC")), high("2", "K").corrected(Quantity.of("22", "degC")));
    }
}
