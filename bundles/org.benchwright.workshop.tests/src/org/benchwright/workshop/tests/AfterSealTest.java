package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

import java.util.Optional;
import org.benchwright.core.Verdict;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.record.DepartureDecision;
import org.benchwright.engine.record.Disposition;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.engine.record.Standing;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.SigningPerson;
import org.junit.jupiter.api.Test;

/** What people sign about records after their seal, with their own keys, and that it verifies. */
class AfterSealTest extends WithSealedTests {

    private String refusal(String test, String person, RecordFact fact) {
        return assertThrows(RefusedException.class, () -> tests.sign(test, person, fact)).getMessage();
    }

    private List<String> told(String test) throws Exception {
        try (BenchLedger ledger = BenchLedger.openReadOnly(tests.file())) {
            return ledger.signedAfterSeal(test).stream().map(note -> note.kind() + " by " + note.by() + ": " + note.words()).toList();
        }
    }

    @Test
    void aDepartureIsDecidedTheUnitHandedOverAndTheRecordSuperseded() throws Exception {
        String test = tests.departed();
        long departure = tests.deviation(test);
        assertEquals(Standing.WAITING, tests.record(test).standing());
        assertTrue(refusal(test, "MJ", new RecordFact.HandedOver("the owner", test + "/1")).startsWith("1 to decide first"));
        tests.sign(test, "MJ", new RecordFact.DepartureDecided(departure, DepartureDecision.ACCEPTED, "it read right against another"));
        tests.sign(test, "HD", new RecordFact.Reviewed(true, ""));
        tests.sign(test, "QN", new RecordFact.HandedOver("the owner", test + "/1"));
        String next = tests.accepted();
        tests.sign(test, "MJ", new RecordFact.Superseded(next, "tested again"));
        assertEquals(Standing.SUPERSEDED, tests.record(test).standing());
        assertEquals(List.of("departure-decided by auditor MJ: departure " + departure + ": accepted: it read right against another",
                "reviewed by auditor HD: agreed", "handed-over by technician QN: to the owner with certificate " + test + "/1",
                "superseded by auditor MJ: by " + next + ": tested again"), told(test));
        assertSound();
    }

    @Test
    void anAmendmentIsReadAndDecidedAgainTheSameOnEveryReading() throws Exception {
        String test = tests.accepted();
        long volts = tests.record(test).run().events().stream().filter(event -> event.body() instanceof Observation.Measured).findFirst()
                .orElseThrow().sequence();
        TestRecord signed = tests.sign(test, "QN", new RecordFact.Amended(volts, "24,11", "read from the photo"));
        TestRecord read = tests.record(test);
        assertEquals(signed.amendments(), read.amendments());
        assertEquals(Verdict.ACCEPTED, read.amendments().get(0).replay().verdict().orElseThrow());
        assertEquals("24.11 V", read.amendments().get(0).replay().changes().get(0).now().numbers().orElseThrow().value());
        assertSound();
    }

    @Test
    void aNonconformityHasADispositionAndTheRecordEndsVoid() throws Exception {
        String test = tests.rejected();
        tests.sign(test, "HD", new RecordFact.NonconformityDecided(tests.deviation(test), Disposition.REPAIR, "the supply board is replaced"));
        tests.sign(test, "KM", new RecordFact.HandedOver("the owner", test + "/1"));
        tests.sign(test, "KM", new RecordFact.Recalled("went to the wrong owner"));
        tests.sign(test, "MJ", new RecordFact.Voided("mixed up with another unit"));
        assertEquals(Standing.VOID, tests.record(test).standing());
        assertSound();
    }

    @Test
    void whoMayNotIsToldBeforeAPasswordIsTried() throws Exception {
        String test = tests.departed();
        RecordFact accepted = new RecordFact.DepartureDecided(tests.deviation(test), DepartureDecision.ACCEPTED, "fine");
        assertTrue(refusal(test, "QN", accepted).startsWith("QN had a hand in this test"));
        assertTrue(refusal(test, "RB", accepted).startsWith("RB may not decide on departures"));
        assertTrue(refusal(test, "XX", accepted).startsWith("There is nobody with the id XX"));
        assertTrue(refusal("T-4K7M2-QXD9R", "MJ", accepted).startsWith("There is no test"));
        assertTrue(refusal(tests.open(), "MJ", new RecordFact.Voided("wrong unit")).contains("is not over"));
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            RefusedException wrong = assertThrows(RefusedException.class, () -> ledger.afterSeal(time.benchTime()).sign(test, accepted,
                    new SigningPerson("MJ", "three dry otters".toCharArray())));
            assertTrue(wrong.getMessage().contains("password"), wrong.getMessage());
        }
        assertEquals(List.of(), told(test));
    }

    @Test
    void onlyASealedTestOfTheSameUnitTakesThePlaceOfAnother() throws Exception {
        String test = tests.accepted();
        tests.sign(test, "QN", new RecordFact.HandedOver("the owner", test + "/1"));
        for (String other : List.of("T-4K7M2-QXD9R", "B-PEOPLE", "anything", tests.open(), tests.rehearsal())) {
            String refusal = refusal(test, "MJ", new RecordFact.Superseded(other, "tested again"));
            assertTrue(refusal.startsWith(other + " is no sealed test of unit C16-004711"), refusal);
        }
    }

    @Test
    void aKeyThatIsRevokedInTheMomentOfSigningSignsNothing() throws Exception {
        String test = tests.accepted();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            BenchTime then = time.interrupted(() -> ledger.registrar(time.benchTime()).revoke(Approved.by("LW"), "HD", "", Optional.empty(), "lost"));
            assertThrows(OvertakenException.class,
                    () -> ledger.afterSeal(then).sign(test, new RecordFact.Reviewed(true, ""), Approved.by("HD")));
        }
        assertEquals(List.of(), told(test));
        assertSound();
    }

    /** The second line of verification tells of it; nobody goes on by it meanwhile. */
    @Test
    void whatAKeySignedThatWasLostBeforeIsNotHandedOverBy() throws Exception {
        String test = tests.departed();
        Instant lost = time.instant();
        time.advance(Duration.ofHours(1));
        tests.sign(test, "MJ", new RecordFact.DepartureDecided(tests.deviation(test), DepartureDecision.ACCEPTED, "fine"));
        time.advance(Duration.ofHours(1));
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            ledger.registrar(time.benchTime()).revoke(Approved.by("LW"), "MJ", "", Optional.of(lost), "stick lost");
            assertEquals(List.of(false), ledger.signedAfterSeal(test).stream().map(note -> note.trusted()).toList());
        }
        String refusal = refusal(test, "QN", new RecordFact.HandedOver("the owner", test + "/1"));
        assertTrue(refusal.contains("signed by auditor MJ, can't be relied on any more"), refusal);
        tests.sign(test, "HD", new RecordFact.Voided("decided with a lost key"));
        assertEquals(Standing.VOID, tests.record(test).standing());
        assertEquals(1, tests.report().signatures().size());
    }
}
