package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.FieldReturn.Fault;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Observation;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.FleetFilter;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Sitting;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Units that come back: which tests take that, how it stands in the record, what verification and figures make of it. */
class ReturnTest extends AtTheBench {

    private static final FleetFilter ALL = new FleetFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    @BeforeEach
    void approve() throws Exception {
        Approved.people(ledger, time.benchTime());
        Approved.approve(ledger, time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        workshop.attach(plate());
    }

    private Sitting begin(boolean rehearsal) throws Exception {
        return workshop.open(new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT), new SerialNumber("C16-004711"), QN, rehearsal);
    }

    private String accepted() throws Exception {
        Sitting sitting = begin(false);
        new GoodTechnician(time).carryToTheEnd(sitting);
        return sitting.test();
    }

    private LocalDate today() {
        return LocalDate.ofInstant(time.instant(), time.getZone());
    }

    private static FieldReturn back(LocalDate on, Fault fault) {
        return new FieldReturn(on, "stops when warm", fault);
    }

    private String refusal(String test, FieldReturn back) {
        return assertThrows(RefusedException.class, () -> workshop.returned(test, back, QN)).getMessage();
    }

    @Test
    void aReturnIsASignedEventAfterTheSealThatVerifies() throws Exception {
        String test = accepted();
        LocalDate sealed = today();
        time.advance(Duration.ofDays(40));
        workshop.returned(test, back(today(), Fault.NOT_LOOKED_FOR), QN);
        assertEquals(Optional.of(back(today(), Fault.NOT_LOOKED_FOR)), ledger.test(test).orElseThrow().field().orElseThrow().returned());
        assertEquals(sealed, ledger.test(test).orElseThrow().field().orElseThrow().since());
        assertEquals(List.of("returned: back on " + today() + ": stops when warm; fault not looked for yet"),
                ledger.signedAfterSeal(test).stream().map(note -> note.kind() + ": " + note.words()).toList());
        LedgerReport report = BenchLedger.verify(file());
        assertTrue(report.sound(), report::toString);
    }

    @Test
    void onlyAnAcceptedUnitThatIsOutComesBack() throws Exception {
        assertEquals("There is no test T-4K7M2-QXD9R in this ledger.", refusal("T-4K7M2-QXD9R", back(today(), Fault.CONFIRMED)));
        Sitting open = begin(false);
        assertEquals("Test " + open.test() + " is not over, so its unit has not been handed over.",
                refusal(open.test(), back(today(), Fault.CONFIRMED)));
        new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Observation.Sight.NO, "dark")).carryToTheEnd(open);
        assertTrue(refusal(open.test(), back(today(), Fault.CONFIRMED)).contains("This unit was rejected"));
        Sitting rehearsal = begin(true);
        new GoodTechnician(time).carryToTheEnd(rehearsal);
        assertTrue(refusal(rehearsal.test(), back(today(), Fault.CONFIRMED)).startsWith("A rehearsal tests no unit"));
    }

    @Test
    void daysThatCannotBeAndASecondReturnAreRefusedButTheFaultMayBeToldLater() throws Exception {
        String test = accepted();
        LocalDate sealed = today();
        time.advance(Duration.ofDays(40));
        assertTrue(refusal(test, back(sealed.minusDays(2), Fault.CONFIRMED)).contains("it is out since " + sealed));
        assertTrue(refusal(test, back(today().plusDays(2), Fault.CONFIRMED)).contains("today is " + today()));
        assertTrue(refusal(test, new FieldReturn(today(), " ", Fault.CONFIRMED)).contains("Write the complaint down"));
        workshop.returned(test, back(today(), Fault.NOT_LOOKED_FOR), QN);
        assertTrue(refusal(test, back(today(), Fault.NOT_LOOKED_FOR)).contains("It is on record that it came back"));
        assertTrue(refusal(test, back(today().minusDays(1), Fault.CONFIRMED)).contains("It is on record"));
        workshop.returned(test, back(today(), Fault.CONFIRMED), QN);
        assertEquals(Fault.CONFIRMED, ledger.test(test).orElseThrow().field().orElseThrow().returned().orElseThrow().fault());
        assertTrue(refusal(test, back(today(), Fault.NOT_FOUND)).contains("It is on record"));
    }

    @Test
    void figuresCountItFromTheDayOfTheSealAndARetestWithoutAReturnIsTold() throws Exception {
        String first = accepted();
        time.advance(Duration.ofDays(40));
        workshop.returned(first, back(today(), Fault.CONFIRMED), QN);
        accepted();
        time.advance(Duration.ofDays(10));
        accepted();
        try (Fleet fleet = Fleet.of(file(), Progress.none(), Cancellation.never())) {
            List<Fleet.InField> units = fleet.inField(ALL, today().plusDays(5), 366);
            // Each test lasts three days, in which the unit is on the bench and not out there.
            assertEquals(Set.of(new Fleet.InField("c16_acceptance", 40, Fleet.Ending.CAME_BACK, Optional.of(Fault.CONFIRMED), 1),
                    new Fleet.InField("c16_acceptance", 10, Fleet.Ending.TESTED_AGAIN, Optional.empty(), 1),
                    new Fleet.InField("c16_acceptance", 5, Fleet.Ending.STILL_OUT, Optional.empty(), 1)), Set.copyOf(units));
        }
    }

    /** Whoever holds the bench key can sign nonsense; verification names it. */
    @Test
    void aForgedReturnIsFoundByTheThirdLine() throws Exception {
        String test = accepted();
        forge(test, "{\"complaint\":\"dead\",\"fault\":\"confirmed\",\"on\":\"2020-01-01\"}");
        LedgerReport early = BenchLedger.verify(file());
        assertEquals(1, early.decisions().size(), early::toString);
        assertTrue(early.decisions().get(0).reason().contains("It cannot have come back on 2020-01-01"), early.decisions().toString());
        String other = accepted();
        forge(other, "{\"complaint\":\"dead\",\"fault\":\"perhaps\",\"on\":\"" + today() + "\"}");
        LedgerReport unread = BenchLedger.verify(file());
        assertEquals(2, unread.decisions().size());
        assertTrue(unread.decisions().stream().anyMatch(fault -> fault.reason().contains("unknown fault")), unread.decisions().toString());
        String third = accepted();
        forge(third, "{\"complaint\":\"dead\",\"fault\":\"confirmed\",\"on\":\"" + today() + "\",\"paid\":\"twice\"}");
        LedgerReport more = BenchLedger.verify(file());
        assertEquals(3, more.decisions().size());
        assertTrue(more.decisions().stream().anyMatch(fault -> fault.reason().contains("unknown field \"paid\"")), more.decisions().toString());
    }

    private void forge(String test, String payload) throws Exception {
        try (Ledger raw = SqliteLedger.open(file())) {
            TestId id = new TestId(test);
            raw.appendSigned(new EntryDraft(id, time.instant(), 2, Duration.ZERO, QN, EventKinds.RETURNED, payload), raw.lastSequence(id),
                    new Signing(BenchKeyStore.openOrCreate(BenchFolder.of(file()).path()), Meaning.RECEIVED_BACK, "bench 2"));
        }
    }
}
