package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.WorkStage;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.FleetFilter;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.RecordFault;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.benchwright.workshop.internal.KeptTests;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The bench is proved by a test of a known-good unit, and the tests that need it say by which. */
class ProvedBenchTest extends AtTheBench {

    private static final String FIRST_SWITCH = "hazard.mains";

    @BeforeEach
    void approve() throws Exception {
        Approved.people(ledger, time.benchTime());
        Approved.approve(ledger, time.benchTime(), needing(), SamplePlan.TEXT);
        Approved.approve(ledger, time.benchTime(), proving(), SamplePlan.TEXT);
    }

    private static Plan needing() {
        return needing(SamplePlan.acceptance().name());
    }

    /** The acceptance, on a bench that was proved within a day. */
    static Plan needing(String name) {
        return named(SamplePlan.acceptance(), name, Optional.empty(), Optional.of(Duration.ofHours(24)));
    }

    /** The acceptance of a known-good unit. */
    static Plan proving() {
        Plan whole = SamplePlan.acceptance();
        return shortened(named(whole, "known_good", Optional.of(Duration.ofHours(12)), Optional.empty()));
    }

    /** Without the soak, for which a known-good unit has no time. */
    private static Plan shortened(Plan p) {
        return new Plan(p.format(), p.name(), p.title(), p.revision(), p.purpose(), p.retestOf(), p.provesBenchFor(), p.family(), Optional.empty(), p.hazards(),
                p.protectedItems(), p.instruments(), p.preconditions(), p.preconditionUnmet(), p.stages().stream().filter(WorkStage.class::isInstance).toList(),
                p.makeSafe(), p.end(), p.needsBenchProvedWithin());
    }

    private static Plan named(Plan p, String name, Optional<Duration> proves, Optional<Duration> needs) {
        return new Plan(p.format(), name, p.title(), p.revision(), p.purpose(), p.retestOf(), proves, p.family(), p.claim(), p.hazards(),
                p.protectedItems(), p.instruments(), p.preconditions(), p.preconditionUnmet(), p.stages(), p.makeSafe(), p.end(), needs);
    }

    private Sitting open(Plan plan, String serial, Station station, boolean rehearsal) throws Exception {
        Workshop workshop = ledger.workshop(station, time.benchTime());
        workshop.attach(plate());
        return workshop.open(new CompiledProcedure(plan, SamplePlan.TEXT), new SerialNumber(serial), QN, rehearsal);
    }

    private Sitting knownGood(Station station, GoodTechnician technician) throws Exception {
        Sitting sitting = open(proving(), "C16-000001", station, false);
        technician.carryToTheEnd(sitting);
        return sitting;
    }

    /** A test that has come to where the unit is to be energised for the first time. */
    private Sitting atTheSwitch() throws Exception {
        Sitting sitting = open(needing(), "C16-004711", STATION, false);
        new GoodTechnician(time).carryOnUntil(sitting, FIRST_SWITCH);
        return sitting;
    }

    private void waits(Sitting sitting) {
        RefusedException refused = assertThrows(RefusedException.class, () -> sitting.record(new Fact.HazardAcknowledged("mains")));
        assertTrue(refused.getMessage().startsWith("Don't switch on: the bench was not proved with a known-good unit"), refused.getMessage());
        assertEquals(List.of(), told(sitting));
        assertTrue(sitting.run().benchProofOwed(time.benchTime().now()).isPresent());
    }

    private void goesOn(Sitting sitting, Sitting proof) throws Exception {
        sitting.record(new Fact.HazardAcknowledged("mains"));
        assertEquals(List.of(proof.test()), told(sitting).stream().map(Fact.BenchProved::test).toList());
    }

    private static List<Fact.BenchProved> told(Sitting sitting) {
        return sitting.run().events().stream().map(TestEvent::body).filter(Fact.BenchProved.class::isInstance).map(Fact.BenchProved.class::cast).toList();
    }

    private List<String> faults() throws Exception {
        LedgerReport report = BenchLedger.verify(file());
        assertEquals(List.of(), report.signatures());
        return report.decisions().stream().map(RecordFault::reason).toList();
    }

    @Test
    void aTestWaitsUntilTheBenchIsProvedAndThenGoesOn() throws Exception {
        Sitting sitting = atTheSwitch();
        waits(sitting);
        Sitting proof = knownGood(STATION, new GoodTechnician(time));
        new GoodTechnician(time).carryToTheEnd(sitting);
        assertTrue(sitting.sealed());
        assertEquals(proof.test(), told(sitting).get(0).test());
        assertEquals(Duration.ofHours(12), Duration.between(told(sitting).get(0).instant(), told(sitting).get(0).until()), "as the known-good unit's procedure says");
        assertEquals(List.of(), faults());
    }

    @Test
    void aProofThatIsThereIsToldBeforeTheHazardIsShown() throws Exception {
        knownGood(STATION, new GoodTechnician(time));
        Sitting sitting = atTheSwitch();
        assertEquals(1, told(sitting).size());
        assertEquals(Optional.empty(), sitting.run().benchProofOwed(time.benchTime().now()));
    }

    /** It says something of the bench and nothing of a unit that somebody sent: its measurements are all that figures take of it. */
    @Test
    void aTestOfAKnownGoodUnitIsNoUnitsFirstAndItsUnitIsNotOutThere() throws Exception {
        knownGood(STATION, new GoodTechnician(time));
        open(proving(), "C16-000002", STATION, false).record(new Fact.Abandoned("The rack's lamp stays dark."));
        FleetFilter all = new FleetFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        try (Fleet fleet = Fleet.of(file(), Progress.none(), Cancellation.never())) {
            assertEquals(2, fleet.groups(all).stream().filter(group -> !group.first()).mapToLong(Fleet.Group::count).sum());
            assertEquals(List.of(), fleet.found(all));
            assertEquals(List.of(), fleet.soaks(all));
            assertEquals(List.of(), fleet.inField(all, LocalDate.ofInstant(time.instant(), time.getZone()), 366));
            assertFalse(fleet.measured(all).isEmpty());
        }
    }

    @Test
    void oneThatHasAgedOrIsOfAnotherBenchProvesNothing() throws Exception {
        Sitting aged = knownGood(STATION, new GoodTechnician(time));
        time.advance(Duration.ofHours(12).plusSeconds(1));
        Sitting sitting = atTheSwitch();
        knownGood(new Station("bench 3", "Benchwright 0.1.0"), new GoodTechnician(time));
        waits(sitting);
        assertTrue(aged.sealed());
    }

    @Test
    void aLaterOneThatWasNotAcceptedTakesTheProofAway() throws Exception {
        knownGood(STATION, new GoodTechnician(time));
        Sitting failed = open(proving(), "C16-000001", STATION, false);
        failed.record(new Fact.Abandoned("The rack's lamp stays dark."));
        new GoodTechnician(time).carryToTheEnd(failed);
        Sitting sitting = atTheSwitch();
        waits(sitting);
        goesOn(sitting, knownGood(STATION, new GoodTechnician(time)));
        assertEquals(List.of(), faults());
    }

    @Test
    void aRehearsalProvesNothingAndNeedsNoProof() throws Exception {
        Sitting rehearsed = open(proving(), "C16-000001", STATION, true);
        new GoodTechnician(time).carryToTheEnd(rehearsed);
        waits(atTheSwitch());
        Sitting rehearsal = open(needing(), "C16-004712", STATION, true);
        new GoodTechnician(time).carryToTheEnd(rehearsal);
        assertEquals(List.of(), told(rehearsal));
    }

    @Test
    void aTestThatNamesAProofWhichThereIsNotIsFound() throws Exception {
        Sitting proof = knownGood(STATION, new GoodTechnician(time));
        Sitting sitting = atTheSwitch();
        Fact.BenchProved right = told(sitting).get(0);
        forge(sitting, new Fact.BenchProved(right.test(), right.event(), right.instant(), right.until().plusSeconds(3600)));
        assertTrue(faults().stream().anyMatch(each -> each.contains("it says that " + proof.test() + " proved the bench")), faults().toString());
    }

    @Test
    void aTestThatWasEnergisedWithoutAProofIsFound() throws Exception {
        knownGood(STATION, new GoodTechnician(time));
        Sitting sitting = atTheSwitch();
        sitting.record(new Fact.HazardAcknowledged("mains"));
        forge(sitting, new Fact.Noted("The bench is surely well."));
        assertTrue(faults().stream().anyMatch(each -> each.contains("the bench was not proved")), faults().toString());
    }

    /** The events of a test under another id, with something else instead of its proof. */
    private void forge(Sitting like, Fact instead) throws Exception {
        List<TestEvent> events = like.run().events().stream().map(event -> event.body() instanceof Fact.BenchProved
                ? new TestEvent(event.sequence(), event.moment(), instead instanceof Fact.BenchProved ? event.actor() : QN, instead) : event).toList();
        try (Ledger raw = SqliteLedger.open(file())) {
            raw.append(new TestId("T-4K7M2-QXD9R"), 0, new KeptTests().drafts(new TestId("T-4K7M2-QXD9R"), events));
        }
    }
}
