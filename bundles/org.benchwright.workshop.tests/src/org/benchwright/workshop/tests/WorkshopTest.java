package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Quantity;
import org.benchwright.core.Role;
import org.benchwright.core.SerialNumber;
import org.benchwright.core.Verdict;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.RehearsalTime;
import org.benchwright.workshop.Sitting;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tests carried out in a real ledger, by clocks that are moved by hand. */
class WorkshopTest extends AtTheBench {

    private static final SerialNumber SERIAL = new SerialNumber("C16-004711");
    private static final CompiledProcedure PROCEDURE = new CompiledProcedure(SamplePlan.acceptance(), SamplePlan.TEXT);

    @BeforeEach
    void approve() throws Exception {
        Approved.people(ledger, time.benchTime());
        Approved.approve(ledger, time.benchTime(), PROCEDURE.plan(), PROCEDURE.text());
    }

    private Sitting open() throws Exception {
        Sitting sitting = workshop.open(PROCEDURE, SERIAL, QN, false);
        assertEquals(Digest.of(new byte[] {1}), workshop.attach(plate()));
        return sitting;
    }

    private KeptTest kept(Sitting sitting) throws Exception {
        return ledger.test(sitting.test()).orElseThrow();
    }

    private static <T extends EventBody> List<T> all(Class<T> type, Sitting sitting) {
        return sitting.run().events().stream().map(TestEvent::body).filter(type::isInstance).map(type::cast).toList();
    }

    private void assertSound() throws Exception {
        LedgerReport report = BenchLedger.verify(file());
        assertEquals(List.of(), report.links());
        assertEquals(List.of(), report.signatures());
        assertEquals(List.of(), report.decisions());
        assertTrue(report.sound());
    }

    @Test
    void aRealSoakIsAcceptedOnlyByLettingItsTimePass() throws Exception {
        Sitting sitting = open();
        new GoodTechnician(time).carryToTheEnd(sitting);
        assertEquals(Optional.of(Verdict.ACCEPTED), sitting.run().verdict());
        assertTrue(sitting.sealed());
        TestEvent first = sitting.run().events().get(0);
        TestEvent last = sitting.run().events().get(sitting.run().events().size() - 1);
        assertTrue(last.moment().since(first.moment()).compareTo(Duration.ofHours(72)) >= 0);
        assertEquals(sitting.run().events(), kept(sitting).run().events());
        assertTrue(kept(sitting).sealed());
        assertSound();
    }

    @Test
    void aTestThatIsNoRehearsalNeverSkipsTime() throws Exception {
        Workshop jumping = ledger.workshop(STATION, new RehearsalTime(time.benchTime()));
        RefusedException refused = assertThrows(RefusedException.class, () -> jumping.open(PROCEDURE, SERIAL, QN, false));
        assertEquals("A test runs in real time. Only a rehearsal can skip its waiting times.", refused.getMessage());
        Sitting real = open();
        assertThrows(RefusedException.class, () -> jumping.resume(real.test(), QN));
        assertEquals(1, ledger.openTests().size());
        assertEquals(real.run().events(), kept(real).run().events());
    }

    @Test
    void aLookBeforeItsTimeProvesNothing() throws Exception {
        Sitting sitting = open();
        GoodTechnician technician = new GoodTechnician(time);
        technician.carryOnUntil(sitting, "endurance.look");
        sitting.record(GoodTechnician.looked((org.benchwright.engine.Demand.Look) sitting.run().demand(), Sight.YES));
        assertTrue(sitting.run().witnessed().compareTo(Duration.ofMinutes(1)) < 0);
        assertFalse(sitting.run().ended());
    }

    @Test
    void aRehearsalHasNoVerdictAndIsSealedAsARehearsal() throws Exception {
        Workshop rehearsing = ledger.workshop(STATION, new RehearsalTime(time.benchTime()));
        Sitting sitting = rehearsing.open(PROCEDURE, SERIAL, QN, true);
        workshop.attach(plate());
        new GoodTechnician(time).carryToTheEnd(sitting);
        assertEquals(Optional.empty(), sitting.run().verdict());
        assertEquals(Optional.of(Verdict.ACCEPTED), sitting.run().wouldBe());
        assertTrue(sitting.sealed());
        assertTrue(sitting.run().opening().rehearsal());
        assertSound();
    }

    @Test
    void theTestBeforeOfTheSameUnitIsNamed() throws Exception {
        Sitting first = open();
        new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Sight.NO, "dark")).carryToTheEnd(first);
        assertEquals(Optional.of(Verdict.REJECTED), first.run().verdict());
        workshop.open(PROCEDURE, new SerialNumber("C16-000001"), QN, false);
        Sitting second = workshop.open(PROCEDURE, SERIAL, QN, false);
        assertEquals(Optional.of(first.test()), second.run().opening().predecessor());
        assertEquals(Optional.empty(), first.run().opening().predecessor());
    }

    @Test
    void whatWasInterruptedIsTakenUpWithItsGap() throws Exception {
        Sitting before = open();
        GoodTechnician technician = new GoodTechnician(time);
        technician.carryOnUntil(before, "lamps.pwr");
        time.advance(Duration.ofMinutes(90));
        assertEquals(Optional.of(before.test()), workshop.unfinished(SERIAL, "c16_acceptance", false));
        assertEquals(Optional.empty(), workshop.unfinished(SERIAL, "c16_acceptance", true));
        Sitting after = workshop.resume(before.test(), QN);
        assertEquals(List.of(new Fact.Interrupted(Duration.ofMinutes(90))), all(Fact.Interrupted.class, after));
        assertEquals("power", after.run().demand().key());
        technician.carryToTheEnd(after);
        assertEquals(Optional.of(Verdict.ACCEPTED), after.run().verdict());
        assertEquals(2, after.run().lastMoment().sitting());
        assertSound();
    }

    @Test
    void twoWritersNeverOverwriteEachOther() throws Exception {
        Sitting mine = open();
        try (BenchLedger same = BenchLedger.open(file())) {
            Sitting theirs = same.workshop(STATION, time.benchTime()).resume(mine.test(), new Actor("AL", Role.TECHNICIAN));
            List<TestEvent> before = theirs.run().events();
            OvertakenException told = assertThrows(OvertakenException.class,
                    () -> mine.record(new Fact.Noted("from the first window")));
            assertTrue(told.getMessage().startsWith("Somebody else has written to test " + mine.test()), told.getMessage());
            assertEquals(before, kept(mine).run().events());
            assertEquals(before, mine.run().events());
            assertTrue(mine.over());
            assertThrows(RefusedException.class, () -> mine.record(new Fact.Noted("again")));
            Sitting again = workshop.resume(mine.test(), QN);
            again.record(new Fact.Noted("from the first window"));
            assertThrows(OvertakenException.class, () -> theirs.record(new Fact.Noted("from the second")));
        }
        assertSound();
    }

    @Test
    void aRefusedFactLeavesNoTrace() throws Exception {
        Sitting sitting = open();
        List<TestEvent> before = kept(sitting).run().events();
        assertThrows(RefusedException.class, () -> sitting.record(new Fact.Marked("on")));
        assertEquals(before, kept(sitting).run().events());
        assertThrows(RefusedException.class, () -> workshop.open(PROCEDURE, new SerialNumber("P24-000001"), QN, false));
        assertEquals(1, ledger.openTests().size());
    }

    @Test
    void aStepOfTheWallClockIsRecordedBeforeTheFact() throws Exception {
        Sitting sitting = open();
        time.stepWall(Duration.ofSeconds(2));
        time.advance(Duration.ofHours(1));
        sitting.record(new Fact.Noted("nothing strange yet"));
        assertEquals(List.of(), all(Fact.ClockChanged.class, sitting));
        time.stepWall(Duration.ofHours(-1));
        time.advance(Duration.ofMinutes(5));
        List<TestEvent> made = sitting.record(new Fact.Noted("after the time server came back"));
        assertEquals(List.of(new Fact.ClockChanged(Duration.ofHours(-1))), all(Fact.ClockChanged.class, sitting));
        assertEquals("after the time server came back", ((Fact.Noted) made.get(0).body()).text());
        assertEquals(sitting.run().events(), kept(sitting).run().events());
    }

    /** Nothing tells how long it was then; that it is not known is on record, and for the auditor to decide. */
    @Test
    void aWallClockThatWasSetBackBetweenTwoSittingsIsRecorded() throws Exception {
        Sitting sitting = open();
        time.stepWall(Duration.ofSeconds(-50));
        Sitting second = workshop.resume(sitting.test(), QN);
        assertEquals(List.of(), all(Fact.ClockChanged.class, second), "the clocks of two stations may differ by as much");
        time.stepWall(Duration.ofHours(-1));
        time.advance(Duration.ofMinutes(5));
        Sitting third = workshop.resume(sitting.test(), QN);
        assertEquals(List.of(new Fact.ClockChanged(Duration.ofMinutes(-55))), all(Fact.ClockChanged.class, third));
        assertEquals(Duration.ZERO, all(Fact.Interrupted.class, third).get(1).gap());
        assertTrue(all(Derived.DepartureNoted.class, third).stream().anyMatch(each -> each.kind() == DepartureKind.CLOCK_CHANGED));
        third.record(new Fact.Noted("the time server was wrong"));
        assertEquals(1, all(Fact.ClockChanged.class, third).size());
        assertSound();
    }

    @Test
    void aTestThatEndedJustBeforeThePowerFailedIsSealedWhenTakenUp() throws Exception {
        Sitting sitting = open();
        new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Sight.NO, "")).carryOnUntil(sitting, "drain.residual");
        // The last fact without the seal, as a power cut leaves it.
        UnsealedEnd.append(file(), sitting, new Observation.Measured("residual", "0.4", Quantity.of("0.4", "V")));
        assertFalse(kept(sitting).sealed());
        assertTrue(kept(sitting).run().ended());
        Sitting again = workshop.resume(sitting.test(), QN);
        assertTrue(again.sealed());
        assertEquals(Optional.of(Verdict.REJECTED), again.run().verdict());
        RefusedException refused = assertThrows(RefusedException.class, () -> workshop.resume(sitting.test(), QN));
        assertTrue(refused.getMessage().contains("sealed"), refused.getMessage());
        assertSound();
    }

    @Test
    void onlyFilesThatCanBeReadAreAttached() throws Exception {
        RefusedException none = assertThrows(RefusedException.class, () -> workshop.attach(folder.resolve("nothing.jpg")));
        assertTrue(none.getMessage().startsWith("There is no file "), none.getMessage());
        assertThrows(RefusedException.class, () -> workshop.attach(folder));
    }

    @Test
    void openTestsAreListedAsFarAsTheyAre() throws Exception {
        Sitting sealed = open();
        new GoodTechnician(time).but("lamps.pwr", new Observation.Seen("pwr", Sight.NO, "")).carryToTheEnd(sealed);
        Sitting waiting = workshop.open(PROCEDURE, new SerialNumber("C16-000002"), QN, false);
        List<String> open = new ArrayList<>();
        ledger.openTests().forEach(test -> open.add(test.id()));
        assertEquals(List.of(waiting.test()), open);
        LedgerReport report = BenchLedger.verify(file());
        assertEquals(2, report.tests());
        assertEquals(2, report.derived());
        assertEquals(List.of(waiting.test()), report.open().stream().map(KeptTest::id).toList());
        assertEquals(1, all(Derived.NonconformityNoted.class, sealed).size());
    }
}
