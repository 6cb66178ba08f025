package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.engine.instrument.InstrumentUse;
import org.benchwright.engine.instrument.RegisteredUncertainty;
import org.benchwright.engine.plan.Plan;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.InstrumentRegister;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.InstrumentCodec;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The register of instruments: who signs it, what a test copies of it, and what verification says of a forged one. */
class InstrumentRegisterTest extends AtTheBench {

    static final InstrumentFact ADDED = new InstrumentFact.Added("M-17", "Multimeter", "SN 4", List.of(new InstrumentRange(InstrumentUse.READS, "dc",
            Quantity.of("0", "V"), Quantity.of("60", "V"), new BigDecimal("0.05"), BigDecimal.ONE, Quantity.of("0.01", "V"), Optional.empty())), "bench 2");

    private final InstrumentCodec codec = new InstrumentCodec();
    private InstrumentRegister register;

    @BeforeEach
    void openRegister() throws Exception {
        register = ledger.instrumentRegister(time.benchTime());
    }

    private void people() throws Exception {
        Approved.people(ledger, time.benchTime());
        Approved.approve(ledger, time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
    }

    private InstrumentFact calibrated() {
        LocalDate today = LocalDate.ofInstant(time.instant(), time.getZone());
        return new InstrumentFact.Calibrated("M-17", "C-9", today, Optional.of(today.plusYears(1)), List.of());
    }

    private LedgerReport verified() throws Exception {
        LedgerReport report = BenchLedger.verify(file());
        assertEquals(List.of(), report.links());
        assertEquals(List.of(), report.signatures());
        return report;
    }

    private void found(String place, long sequence, String words) throws Exception {
        OneFault.at(place, sequence, verified(), words);
    }

    @Test
    void theBenchSignsUntilPeopleHaveKeysAndThenAnEngineerOrASupervisor() throws Exception {
        register.sign(ADDED, Optional.empty());
        people();
        assertTrue(assertThrows(RefusedException.class, () -> register.sign(calibrated(), Optional.empty())).getMessage().contains("People have keys"));
        assertTrue(assertThrows(RefusedException.class, () -> register.sign(calibrated(), Optional.of(Approved.by("LW")))).getMessage()
                .contains("it takes an engineer or a supervisor"));
        assertEquals("C-9", register.sign(calibrated(), Optional.of(Approved.by("RB"))).certificate());
        register.sign(new InstrumentFact.Retired("M-17", "was dropped"), Optional.of(Approved.by("KM")));
        assertEquals(Optional.of("was dropped"), ledger.instruments().find("M-17").orElseThrow().retired());
        assertTrue(verified().sound());
    }

    private Sitting begin() throws Exception {
        workshop.attach(plate());
        return workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), QN, false);
    }

    static Fact named(Instrument meter) {
        Plan plan = SamplePlan.acceptance();
        return new Observation.InstrumentNamed("meter", "M-17", RegisteredUncertainty.of(plan, plan.instruments().get(0), meter.ranges()),
                BigDecimal.valueOf(2), meter.due(), Optional.of(Workshop.entry(meter)));
    }

    @Test
    void aTestCopiesTheEntryAndStaysSoundWhenTheRegisterGoesOn() throws Exception {
        people();
        register.sign(ADDED, Optional.of(Approved.by("RB")));
        Instrument meter = register.sign(calibrated(), Optional.of(Approved.by("RB")));
        Sitting sitting = begin();
        new GoodTechnician(time).but("instrument.meter", named(meter)).carryToTheEnd(sitting);
        register.sign(new InstrumentFact.Retired("M-17", "was dropped"), Optional.of(Approved.by("KM")));
        assertTrue(sitting.run().events().stream().map(TestEvent::body).anyMatch(body -> body instanceof Observation.InstrumentNamed n && n.entry()
                .isPresent()));
        LedgerReport report = verified();
        assertTrue(report.sound(), report.decisions()::toString);
    }

    /** Whoever holds the bench key writes a test that promises more than the register. */
    @Test
    void aTestThatTellsOfAnotherEntryThanTheRegistersIsFound() throws Exception {
        people();
        register.sign(ADDED, Optional.of(Approved.by("RB")));
        Instrument meter = register.sign(calibrated(), Optional.of(Approved.by("RB")));
        Instrument rosy = new Instrument(meter.asset(), meter.title(), meter.serial(), meter.ranges(), meter.custody(), "C-10", meter.calibrated(), meter.due(),
                meter.retired(), meter.statement());
        Sitting sitting = begin();
        new GoodTechnician(time).but("instrument.meter", named(rosy)).carryToTheEnd(sitting);
        found(sitting.test(), event(sitting), "instrument M-17");
    }

    @Test
    void anOlderEntryThanTheLastIsFound() throws Exception {
        people();
        Instrument first = register.sign(ADDED, Optional.of(Approved.by("RB")));
        register.sign(new InstrumentFact.Retired("M-17", "was dropped"), Optional.of(Approved.by("RB")));
        Sitting sitting = begin();
        new GoodTechnician(time).but("instrument.meter", named(first)).carryToTheEnd(sitting);
        found(sitting.test(), event(sitting), "instrument M-17");
    }

    private static long event(Sitting sitting) {
        return sitting.run().events().stream().filter(each -> each.body() instanceof Observation.InstrumentNamed).findFirst().orElseThrow().sequence();
    }

    /** By hand somebody could promise more than the register, or take what was put out of service. */
    @Test
    void anInstrumentThatIsToldByHandAlthoughTheRegisterHasItIsFound() throws Exception {
        people();
        register.sign(ADDED, Optional.of(Approved.by("RB")));
        register.sign(new InstrumentFact.Retired("M-17", "was dropped"), Optional.of(Approved.by("RB")));
        time.advance(Duration.ofMinutes(2));
        Sitting sitting = begin();
        new GoodTechnician(time).carryToTheEnd(sitting);
        found(sitting.test(), event(sitting), "it tells of instrument M-17 by hand, which the register of instruments had by then");
    }

    @Test
    void oneThatIsEnteredInTheSameMomentOrAfterwardsIsRightlyToldByHand() throws Exception {
        people();
        Sitting sitting = begin();
        GoodTechnician technician = new GoodTechnician(time);
        technician.carryOnUntil(sitting, "instrument.meter");
        register.sign(ADDED, Optional.of(Approved.by("RB")));
        technician.carryToTheEnd(sitting);
        assertTrue(verified().sound(), verified().decisions()::toString);
    }

    @Test
    void anEntryInARoleThatEntersNothingIsFound() throws Exception {
        people();
        ledger.registrar(time.benchTime(), 10).grant(Approved.by("LW"), "RB", Role.AUDITOR);
        try (Ledger raw = SqliteLedger.open(file())) {
            Actor auditor = new Actor("RB", Role.AUDITOR);
            raw.appendSigned(new EntryDraft(TestId.INSTRUMENTS, time.instant(), 1, Duration.ZERO, auditor, codec.kind(ADDED), codec.payload(ADDED)), 0,
                    new Signing(Approved.key(file(), time, "RB"), Meaning.REGISTERED, auditor.toString(), BenchKeyStore.openOrCreate(folder)));
        }
        found("B-INSTRUMENTS", 1, "it takes an engineer or a supervisor");
    }

    private void forge(InstrumentFact fact) throws Exception {
        forge(fact, Meaning.REGISTERED);
    }

    private void forge(InstrumentFact fact, Meaning meaning) throws Exception {
        try (Ledger raw = SqliteLedger.open(file())) {
            raw.appendSigned(new EntryDraft(TestId.INSTRUMENTS, time.instant(), 1, Duration.ZERO, new Actor("RB", Role.ENGINEER), codec.kind(fact),
                    codec.payload(fact)), raw.lastSequence(TestId.INSTRUMENTS), new Signing(BenchKeyStore.openOrCreate(folder), meaning, "engineer RB"));
        }
    }

    @Test
    void anEntryByTheBenchAfterPeopleHaveKeysIsFoundAndCountsForNothing() throws Exception {
        people();
        forge(ADDED);
        found("B-INSTRUMENTS", 1, "People have keys");
        assertEquals(List.of(), ledger.instruments().all());
    }

    @Test
    void anEntryWhoseSignatureMeansSomethingElseIsFound() throws Exception {
        forge(ADDED, Meaning.VOIDED);
        found("B-INSTRUMENTS", 1, "does not mean \"registered\"");
        assertEquals(List.of(), ledger.instruments().all());
    }

    @Test
    void anEntryThatDoesNotFitIsFound() throws Exception {
        forge(new InstrumentFact.Moved("M-99", "LW"));
        found("B-INSTRUMENTS", 1, "no instrument M-99");
        assertEquals(List.of(), ledger.instruments().all());
    }
}
