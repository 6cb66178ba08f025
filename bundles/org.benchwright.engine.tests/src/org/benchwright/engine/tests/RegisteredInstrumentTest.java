package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.instrument.InstrumentUse;
import org.benchwright.engine.instrument.RegisteredUncertainty;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.InstrumentSpec;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.evidence.DecisionRule;
import org.junit.jupiter.api.Test;

/** Instruments that the register tells of, at the step: range, uncertainty and service are its to say. */
class RegisteredInstrumentTest {

    private static final InstrumentSpec METER = new InstrumentSpec("meter", "Multimeter", Optional.of(Quantity.of("30", "V")), Optional.empty(),
            BigDecimal.valueOf(2), Optional.of("reads V dc"), Optional.empty());
    private static final Move REJECTED = new Move.Conclude(Verdict.REJECTED, "out");
    private static final Plan PLAN = PlanDraft.plan().instrument(METER).stage("a", Parts.step("a1", new Action.Measure("volts", "meter",
            UnitOfMeasure.of("V"), Limits.between(Quantity.of("20.4", "V"), Quantity.of("26.4", "V")), DecisionRule.SIMPLE, Optional.empty(), REJECTED,
            REJECTED))).build();

    private static final InstrumentRange SIXTY_VOLTS = Parts.reads("0", "60", "dc");

    private static Observation.RegisterEntry entry(Optional<String> retired, InstrumentRange... ranges) {
        return new Observation.RegisterEntry(3, "Multimeter", "SN 4", List.of(ranges), "C-9", Optional.of(LocalDate.parse("2026-01-10")), "bench 2",
                retired);
    }

    private static Observation.InstrumentNamed named(Observation.RegisterEntry entry) {
        return new Observation.InstrumentNamed("meter", "M-17", RegisteredUncertainty.of(PLAN, METER, entry.ranges()), BigDecimal.valueOf(2),
                Optional.of(LocalDate.parse("2027-01-10")), Optional.of(entry));
    }

    /** At 30 V: (15 mV + 20 mV) times 2 by the square root of 3 is 40.4 mV; at 24 V it is 36.95 mV. */
    @Test
    void itIsNamedWithTheLargestUncertaintyAndDecidesWithThatOfTheReading() {
        Walk walk = Walk.open(PLAN).until("instrument.meter").tell(named(entry(Optional.empty(), SIXTY_VOLTS)));
        Observation.InstrumentNamed told = walk.last(Observation.InstrumentNamed.class);
        assertEquals(0, told.uncertainty().orElseThrow().value().compareTo(new BigDecimal("0.0405")));
        walk.tell(new Observation.Measured("volts", "24.00", Quantity.of("24.00", "V")));
        String used = walk.last(Derived.CheckDecided.class).numbers().orElseThrow().uncertainty();
        assertEquals("0.037 V", used);
    }

    @Test
    void theMoreAccurateOfTwoRangesCounts() {
        InstrumentRange coarse = new InstrumentRange(InstrumentUse.READS, "", Quantity.of("0", "V"), Quantity.of("600", "V"), BigDecimal.ONE, BigDecimal.TEN,
                Quantity.of("0.1", "V"), Optional.empty());
        assertEquals(named(entry(Optional.empty(), SIXTY_VOLTS)).uncertainty(), named(entry(Optional.empty(), coarse, SIXTY_VOLTS)).uncertainty());
    }

    private static String refusal(Fact fact) {
        return Walk.open(PLAN).until("instrument.meter").refusal(fact);
    }

    @Test
    void outOfServiceIsAlwaysRefused() {
        assertEquals("M-17 is out of service: was dropped. Take another instrument.", refusal(named(entry(Optional.of("was dropped"), SIXTY_VOLTS))));
    }

    @Test
    void aRangeThatDoesNotReachIsRefusedInWords() {
        String words = refusal(named(entry(Optional.empty(), Parts.reads("0", "20", "dc"))));
        assertTrue(words.startsWith("M-17 has no range for that: the step needs one that reads V dc, for 30 V. It reads 0 V to 20 V dc"), words);
        assertTrue(refusal(named(entry(Optional.empty(), Parts.reads("0", "60", "ac")))).contains("has no range for that"));
        InstrumentRange gives = new InstrumentRange(InstrumentUse.GIVES, "dc", Quantity.of("0", "V"), Quantity.of("60", "V"), BigDecimal.ONE, BigDecimal.ONE,
                Quantity.of("0.01", "V"), Optional.empty());
        assertTrue(refusal(named(entry(Optional.empty(), gives))).contains("has no range for that"));
        assertTrue(refusal(named(entry(Optional.empty()))).contains("has no range for that"));
    }

    /** What it does not reach is the end of a limit. */
    @Test
    void aRefusalGivesNoLimitAwayWhereTheReadingIsEnteredBlind() {
        InstrumentSpec meter = new InstrumentSpec("meter", "Multimeter", Optional.empty(), Optional.empty(), BigDecimal.valueOf(2), Optional.of("reads V dc"),
                Optional.empty());
        Plan blind = PlanDraft.plan().instrument(meter).stage("a", Parts.step("a1", new Action.Measure("volts", "meter", UnitOfMeasure.of("V"),
                Limits.between(Quantity.of("20.4", "V"), Quantity.of("26.4", "V")), DecisionRule.SIMPLE, Optional.empty(), REJECTED, REJECTED, Optional.empty(),
                Optional.of(Action.Measure.Entry.BLIND)))).build();
        String words = Walk.open(blind).until("instrument.meter").refusal(named(entry(Optional.empty(), Parts.reads("0", "20", "dc"))));
        assertEquals("M-17 has no range for what is measured with it: the step needs one that reads V dc. It reads 0 V to 20 V dc, 0.05 % of reading + 2"
                + " digits of 0.01 V. Ask the engineer which instrument will do.", words);
    }

    @Test
    void anotherUncertaintyThanTheEntrysIsRefused() {
        Observation.InstrumentNamed good = named(entry(Optional.empty(), SIXTY_VOLTS));
        Fact better = new Observation.InstrumentNamed("meter", "M-17", Optional.of(Quantity.of("0.001", "V")), good.coverage(), good.due(),
                good.entry());
        assertTrue(refusal(better).contains("By its register entry the uncertainty of M-17 is"));
        Fact none = new Observation.InstrumentNamed("meter", "M-17", Optional.empty(), good.coverage(), good.due(), good.entry());
        assertTrue(refusal(none).contains("By its register entry"));
    }
}
