package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.ledger.Meaning;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.LedgerReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What nobody may sign about a record, signed all the same with good keys under intact hashes: verification names test, event and reason. */
class AfterSealAttackTest extends WithSealedTests {

    /** Nothing but the third line finds it, at the last event of that test. */
    private void found(String test, String words) throws Exception {
        try (BenchLedger ledger = BenchLedger.openReadOnly(tests.file())) {
            OneFault.at(test, ledger.lastSequence(test), tests.report(), words);
        }
    }

    private void forged(String test, String person, Role role, RecordFact fact, String words) throws Exception {
        tests.forge(test, person, role, fact);
        found(test, words);
    }

    private RecordFact accepted(String test) throws Exception {
        return new RecordFact.DepartureDecided(tests.deviation(test), DepartureDecision.ACCEPTED, "fine");
    }

    @Test
    void decidedByATechnicianOfTheTest() throws Exception {
        String test = tests.departed();
        forged(test, "QN", Role.AUDITOR, accepted(test), "QN had a hand in this test");
    }

    @Test
    void decidedBySomebodyWithoutTheRole() throws Exception {
        String test = tests.departed();
        forged(test, "KM", Role.SUPERVISOR, accepted(test), "KM may not decide on departures");
    }

    @Test
    void decidedInARoleThatWasOnlyClaimed() throws Exception {
        String test = tests.departed();
        forged(test, "KM", Role.AUDITOR, accepted(test), "KM may not decide on departures");
    }

    @Test
    void decidedByTheBenchInSomebodysName() throws Exception {
        String test = tests.departed();
        tests.forge(test, tests.benchKey(), new Actor("MJ", Role.AUDITOR), "departure-decided",
                "{\"decision\":\"ACCEPTED\",\"departure\":\"" + tests.deviation(test) + "\",\"reason\":\"fine\"}", Meaning.DECIDED);
        found(test, "nobody whose key was good then has signed it");
    }

    @Test
    void decidedByOneInTheNameOfAnother() throws Exception {
        String test = tests.departed();
        tests.forge(test, tests.key("KM"), new Actor("MJ", Role.AUDITOR), "departure-decided",
                "{\"decision\":\"ACCEPTED\",\"departure\":\"" + tests.deviation(test) + "\",\"reason\":\"fine\"}", Meaning.DECIDED);
        found(test, "it claims to be by MJ, but KM has signed it");
    }

    @Test
    void decidedInSomebodyElsesNameInPrint() throws Exception {
        String test = tests.departed();
        tests.forge(test, tests.key("MJ"), new Actor("MJ", Role.AUDITOR), "departure-decided",
                "{\"decision\":\"ACCEPTED\",\"departure\":\"" + tests.deviation(test) + "\",\"reason\":\"fine\"}", Meaning.DECIDED, "auditor HD");
        found(test, "says \"auditor HD\" in print, and auditor MJ has signed it");
    }

    @Test
    void decidedByWhoPreparedTheRevision() throws Exception {
        String test = tests.departed();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            ledger.registrar(time.benchTime(), 10).grant(Approved.by("LW"), "RB", Role.AUDITOR);
        }
        forged(test, "RB", Role.AUDITOR, accepted(test), "RB prepared the revision");
    }

    @Test
    void decidedTwice() throws Exception {
        String test = tests.departed();
        tests.sign(test, "MJ", accepted(test));
        forged(test, "HD", Role.AUDITOR, new RecordFact.DepartureDecided(tests.deviation(test), DepartureDecision.VOID, "no"), "decided already");
    }

    @Test
    void decidedAfterVoid() throws Exception {
        String test = tests.departed();
        tests.sign(test, "MJ", new RecordFact.Voided("wrong unit"));
        forged(test, "HD", Role.AUDITOR, new RecordFact.DepartureDecided(tests.record(test).deviations().get(0).sequence(),
                DepartureDecision.ACCEPTED, "fine"), "This record is void");
    }

    @Test
    void somethingThatIsNoDeparture() throws Exception {
        String test = tests.departed();
        forged(test, "MJ", Role.AUDITOR, new RecordFact.DepartureDecided(2, DepartureDecision.ACCEPTED, "fine"), "Event 2 of this test is no departure");
    }

    @Test
    void decidedBeforeTheSeal() throws Exception {
        String test = tests.open();
        forged(test, "MJ", Role.AUDITOR, new RecordFact.DepartureDecided(1, DepartureDecision.ACCEPTED, "fine"), "unknown kind of event \"departure-decided\"");
    }

    @Test
    void handedOverWithAnUndecidedDeparture() throws Exception {
        String test = tests.departed();
        forged(test, "QN", Role.TECHNICIAN, new RecordFact.HandedOver("the owner", test + "/1"), "1 to decide first");
    }

    @Test
    void handedOverWithAnotherNumber() throws Exception {
        String test = tests.accepted();
        forged(test, "QN", Role.TECHNICIAN, new RecordFact.HandedOver("the owner", test + "/2"), "is not the one that holds");
    }

    @Test
    void handedOverAlthoughTheAmendedReadingRejectsTheUnit() throws Exception {
        String test = tests.accepted();
        long lamp = tests.record(test).run().events().stream().filter(event -> event.body() instanceof Observation.Seen).findFirst().orElseThrow()
                .sequence();
        tests.sign(test, "QN", new RecordFact.Amended(lamp, "no", "the film shows it dark"));
        forged(test, "QN", Role.TECHNICIAN, new RecordFact.HandedOver("the owner", test + "/2"), "with what was amended it would have been rejected");
    }

    @Test
    void aDispositionOutsideTheList() throws Exception {
        String test = tests.rejected();
        tests.forge(test, tests.key("MJ"), new Actor("MJ", Role.AUDITOR), "nonconformity-decided",
                "{\"disposition\":\"POLISH\",\"nonconformity\":\"" + tests.deviation(test) + "\",\"reason\":\"fine\"}", Meaning.DECIDED);
        found(test, "disposition");
    }

    @Test
    void aDispositionUnderAnotherMeaning() throws Exception {
        String test = tests.rejected();
        tests.forge(test, tests.key("MJ"), new Actor("MJ", Role.AUDITOR), "nonconformity-decided",
                "{\"disposition\":\"SCRAP\",\"nonconformity\":\"" + tests.deviation(test) + "\",\"reason\":\"fine\"}", Meaning.REVIEWED);
        found(test, "its signature does not mean \"decided\"");
    }

    @Test
    void aReviewByThePreparer() throws Exception {
        String test = tests.accepted();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            ledger.registrar(time.benchTime(), 10).grant(Approved.by("LW"), "RB", Role.AUDITOR);
        }
        forged(test, "RB", Role.AUDITOR, new RecordFact.Reviewed(true, ""), "RB prepared the revision");
    }

    @Test
    void aReviewByWhoDecided() throws Exception {
        String test = tests.rejected();
        tests.sign(test, "MJ", new RecordFact.NonconformityDecided(tests.deviation(test), Disposition.SCRAP, "dead"));
        forged(test, "MJ", Role.AUDITOR, new RecordFact.Reviewed(true, ""), "A review takes another auditor");
    }

    @Test
    void anAmendmentOfWhatIsNoEntry() throws Exception {
        String test = tests.accepted();
        forged(test, "QN", Role.TECHNICIAN, new RecordFact.Amended(1, "C16-004712", "typed wrong"), "Event 1 is no entry");
    }

    @Test
    void handedOverWithoutTheReviewForWhichItWasDrawn() throws Exception {
        tests.reviewAll();
        String test = tests.accepted();
        forged(test, "QN", Role.TECHNICIAN, new RecordFact.HandedOver("the owner", test + "/1"), "This record was drawn for a review");
    }

    @Test
    void reviewedByATechnicianOfTheTestThatWasDrawn() throws Exception {
        tests.reviewAll();
        String test = tests.accepted();
        forged(test, "QN", Role.AUDITOR, new RecordFact.Reviewed(true, ""), "QN had a hand in this test");
    }

    @Test
    void aRehearsalThatIsHandedOver() throws Exception {
        String test = tests.rehearsal();
        forged(test, "QN", Role.TECHNICIAN, new RecordFact.HandedOver("the owner", test + "/1"), "A rehearsal tests no unit");
    }

    @Test
    void supersededByATestOfNoUnit() throws Exception {
        String test = tests.accepted();
        tests.sign(test, "QN", new RecordFact.HandedOver("the owner", test + "/1"));
        forged(test, "MJ", Role.AUDITOR, new RecordFact.Superseded("T-4K7M2-QXD9R", "tested again"), "is no sealed test of unit C16-004711");
    }

    /** Who seals is the technician who worked on it, by the own key and as a technician, or the bench by its own. */
    @ParameterizedTest
    @CsvSource({"MJ, MJ, TECHNICIAN, 'it is sealed by MJ, who told nothing in it'", "QN, QN, AUDITOR, it is sealed in the name of auditor QN",
        "MJ, QN, TECHNICIAN, it is sealed in the name of technician QN", "QN, bench, BENCH, it is sealed in the name of bench bench"})
    void sealedByWhoDoesNotSealIt(String key, String named, Role as, String words) throws Exception {
        String test = tests.ended();
        tests.forge(test, tests.key(key), new Actor(named, as), "sealed", "{}", Meaning.CARRIED_OUT);
        found(test, words);
    }

    @Test
    void sealedByTheTechnicianWhoWorkedOnItIsSound() throws Exception {
        tests.forge(tests.ended(), tests.key("QN"), new Actor("QN", Role.TECHNICIAN), "sealed", "{}", Meaning.CARRIED_OUT);
        assertSound();
    }

    /** That a unit came back is told by a technician and signed by the bench. */
    @ParameterizedTest
    @CsvSource({"QN, QN, TECHNICIAN, it is told by technician QN and signed by QN", "bench, MJ, AUDITOR, it is told by auditor MJ and signed by bench"})
    void returnedByWhoDoesNotTellIt(String key, String named, Role as, String words) throws Exception {
        String test = tests.accepted();
        String back = "{\"complaint\":\"dead\",\"fault\":\"confirmed\",\"on\":\"" + LocalDate.ofInstant(time.instant(), time.getZone()) + "\"}";
        tests.forge(test, key.equals("bench") ? tests.benchKey() : tests.key(key), new Actor(named, as), "returned", back, Meaning.RECEIVED_BACK);
        found(test, words);
    }

    /** The second line finds it, and nobody works with such a record. */
    @Test
    void decidedWithARevokedKeyUnderAClockSetBack() throws Exception {
        String test = tests.departed();
        RecordFact accepted = accepted(test);
        time.advance(Duration.ofHours(1));
        Instant now = time.instant();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            ledger.registrar(time.benchTime(), 10).revoke(Approved.by("LW"), "MJ", "", Optional.of(now), "token stolen");
        }
        time.advance(Duration.ofHours(-2));
        tests.forge(test, "MJ", Role.AUDITOR, accepted);
        LedgerReport report = tests.report();
        assertEquals(1, report.signatures().size(), report.signatures().toString());
        assertTrue(report.signatures().get(0).reason().contains("token stolen"), report.signatures().toString());
        FaultyRecordException faulty = assertThrows(FaultyRecordException.class, () -> tests.record(test));
        assertTrue(faulty.fault().reason().contains("nobody whose key was good then"), faulty.fault().reason());
    }
}
