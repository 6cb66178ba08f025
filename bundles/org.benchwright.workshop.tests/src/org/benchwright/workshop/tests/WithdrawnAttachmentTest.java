package org.benchwright.workshop.tests;

import static org.benchwright.workshop.tests.ErasedBytes.asIfWithdrawn;
import static org.benchwright.workshop.tests.ErasedBytes.found;
import static org.benchwright.workshop.tests.ErasedBytes.photo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Year;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.WithdrawalMissingException;
import org.benchwright.ledger.YearArchive;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.Workshop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A photo that shows a person is taken away: rightly, without the right to, without an event, and in copies. */
class WithdrawnAttachmentTest extends WithSealedTests {

    private static final int SMALL = 2000;
    private static final int LARGE = 400 << 10;

    private String test(byte[] photo) throws Exception {
        tests.attaching(photo);
        return tests.attached();
    }

    private RecordFact withdrawn(String test, byte[] photo) throws Exception {
        return new RecordFact.AttachmentWithdrawn(tests.record(test).attachments().get(0).event(), Digest.of(photo), "a face can be seen");
    }

    @ParameterizedTest
    @ValueSource(ints = {SMALL, LARGE})
    void theBytesGoAndDigestReasonAndSignatureStay(int size) throws Exception {
        byte[] photo = photo(size);
        String test = test(photo);
        Files.deleteIfExists(folder.resolve("bench/plate.jpg"));
        assertTrue(found(folder, photo));
        tests.sign(test, "MJ", withdrawn(test, photo));
        assertFalse(found(folder, photo), "neither in the ledger, nor in its log, nor beside it");
        LedgerReport report = tests.report();
        assertTrue(report.sound(), report.toString());
        assertEquals(List.of("attachment " + Digest.of(photo).hex() + " was withdrawn by auditor MJ: a face can be seen"), reasons(report.withdrawn()));
        assertEquals("MJ", tests.record(test).withdrawn(tests.record(test).attachments().get(0).event()).orElseThrow().person());
        try (SqliteLedger ledger = SqliteLedger.open(tests.file())) {
            assertEquals(Optional.empty(), ledger.document(Digest.of(photo)));
            ledger.erase(new TestId(test), Digest.of(photo));
        }
        assertNotKeptAgain(photo);
        assertTrue(tests.report().sound(), "done again it does no harm");
        tests.attaching(new byte[] {1});
        String again = tests.accepted();
        assertTrue(tests.report().sound(), "and work goes on: " + again);
    }

    private boolean ended(String test) throws Exception {
        long event = tests.record(test).attachments().get(0).event();
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            return ledger.afterSeal(time.benchTime()).endWithdrawal(test, event);
        }
    }

    /** Between signature and erasure the power goes. */
    @Test
    void aWithdrawalThatWasBrokenOffAfterTheSignatureIsEnded() throws Exception {
        byte[] photo = photo(LARGE);
        String test = test(photo);
        Files.deleteIfExists(folder.resolve("bench/plate.jpg"));
        assertFalse(ended(test), "nobody withdrew it");
        assertTrue(found(folder, photo));
        tests.forge(test, "MJ", Role.AUDITOR, withdrawn(test, photo));
        assertTrue(tests.report().withdrawn().get(0).reason().contains("its bytes are still here"), tests.report().withdrawn().toString());
        assertTrue(ended(test));
        assertFalse(found(folder, photo));
        LedgerReport report = tests.report();
        assertTrue(report.sound(), report.toString());
        assertTrue(report.withdrawn().get(0).reason().endsWith("a face can be seen"), report.withdrawn().toString());
        assertFalse(ended(test), "nothing is left");
    }

    @Test
    void allThatWereBrokenOffAreEndedAtOnce() throws Exception {
        byte[] photo = photo(LARGE);
        String test = test(photo);
        Files.deleteIfExists(folder.resolve("bench/plate.jpg"));
        assertFalse(tests.report().bytesLeft(), "nobody withdrew it");
        tests.forge(test, "MJ", Role.AUDITOR, withdrawn(test, photo));
        assertTrue(tests.report().bytesLeft());
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            assertEquals(1, ledger.afterSeal(time.benchTime()).endWithdrawals());
            assertEquals(0, ledger.afterSeal(time.benchTime()).endWithdrawals(), "nothing is left");
        }
        assertFalse(found(folder, photo));
        assertTrue(tests.report().sound(), tests.report().toString());
        assertFalse(tests.report().bytesLeft());
    }

    /** What was withdrawn is not kept again, and whoever attaches it is told so. */
    private void assertNotKeptAgain(byte[] photo) throws Exception {
        Path again = Files.write(folder.resolve("again.jpg"), photo);
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            Workshop workshop = ledger.workshop(new Station("bench 2", "Benchwright 0.1.0"), time.benchTime());
            RefusedException refused = assertThrows(RefusedException.class, () -> workshop.attach(again));
            assertTrue(refused.getMessage().contains("was withdrawn from this ledger before"), refused.getMessage());
        }
        Files.delete(again);
        assertFalse(found(folder, photo));
    }

    @Test
    void copiesArchiveAndBackupCarryIt() throws Exception {
        byte[] photo = photo(LARGE);
        String test = test(photo);
        Files.deleteIfExists(folder.resolve("bench/plate.jpg"));
        tests.sign(test, "MJ", withdrawn(test, photo));
        Path backup = LedgerBackup.write(tests.file(), folder.resolve("backup"), false);
        LedgerReport copied = BenchLedger.verify(backup);
        assertTrue(copied.sound(), copied.toString());
        assertEquals(1, copied.withdrawn().size());
        LedgerBackup.restore(folder.resolve("backup"), folder.resolve("again").resolve("bench.ledger"));
        LedgerReport restored = BenchLedger.verify(folder.resolve("again").resolve("bench.ledger"));
        assertTrue(restored.sound(), restored.toString());
        try (SqliteLedger ledger = SqliteLedger.openReadOnly(tests.file())) {
            YearArchive.Content content = YearArchive.write(ledger, Year.of(2026), folder.resolve("2026.zip"));
            assertEquals(List.of(), content.faults());
            assertEquals(1, content.tests());
        }
        assertFalse(found(folder, photo));
    }

    // ---- attacks

    private void takeAway(Digest digest, byte[] instead) throws Exception {
        ErasedBytes.takeAway(tests.file(), digest, instead);
    }

    @Test
    void whatIsTakenAwayWithoutAnEventIsAFault() throws Exception {
        byte[] photo = photo(SMALL);
        test(photo);
        takeAway(Digest.of(photo), asIfWithdrawn());
        LedgerReport report = tests.report();
        assertEquals(List.of("The bytes of attachment " + Digest.of(photo).hex() + " were taken away, and nobody withdrew it."), reasons(report.links()));
    }

    @Test
    void aFileBesideThatIsDeletedWithoutAnEventIsAFault() throws Exception {
        byte[] photo = photo(LARGE);
        test(photo);
        String hex = Digest.of(photo).hex();
        Files.delete(folder.resolve("bench/attachments").resolve(hex.substring(0, 2)).resolve(hex.substring(2)));
        assertEquals(1, tests.report().links().size());
    }

    @Test
    void withdrawnByATechnicianOfTheTestIsAFault() throws Exception {
        byte[] photo = photo(SMALL);
        String test = test(photo);
        RecordFact fact = withdrawn(test, photo);
        assertThrows(RefusedException.class, () -> tests.sign(test, "QN", fact));
        tests.forge(test, "QN", Role.AUDITOR, fact);
        assertThrows(FaultyRecordException.class, () -> tests.record(test));
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            assertThrows(FaultyRecordException.class, () -> ledger.afterSeal(time.benchTime()).endWithdrawal(test, ((RecordFact.AttachmentWithdrawn) fact).event()));
            assertEquals(0, ledger.afterSeal(time.benchTime()).endWithdrawals());
        }
        assertTrue(found(folder, photo), "such a withdrawal takes nothing away");
        takeAway(Digest.of(photo), asIfWithdrawn());
        assertOneDecision("QN had a hand in this test");
    }

    private void assertOneDecision(String words) throws Exception {
        OneFault.in(tests.report(), words);
    }

    @Test
    void withdrawnWithTheBenchKeyIsAFault() throws Exception {
        byte[] photo = photo(SMALL);
        String test = test(photo);
        long event = tests.record(test).attachments().get(0).event();
        tests.forge(test, tests.benchKey(), new Actor("MJ", Role.AUDITOR), "attachment-withdrawn", "{\"attachment\":\"" + DocumentReference.of(Digest.of(photo))
                + "\",\"event\":\"" + event + "\",\"reason\":\"a face\"}", Meaning.WITHDRAWN);
        takeAway(Digest.of(photo), asIfWithdrawn());
        assertOneDecision("nobody whose key was good then has signed it");
    }

    @Test
    void whatAnotherTestAttachedIsNotWithdrawnByThisOne() throws Exception {
        byte[] photo = photo(SMALL);
        test(photo);
        byte[] other = photo(SMALL + 1);
        String second = test(other);
        tests.forge(second, "MJ", Role.AUDITOR, new RecordFact.AttachmentWithdrawn(tests.record(second).attachments().get(0).event(), Digest.of(photo),
                "a face"));
        takeAway(Digest.of(photo), asIfWithdrawn());
        assertOneDecision("attached nothing of the kind");
    }

    @Test
    void otherBytesInThePlaceOfAWithdrawnAttachmentAreAFault() throws Exception {
        byte[] photo = photo(SMALL);
        String test = test(photo);
        tests.sign(test, "MJ", withdrawn(test, photo));
        takeAway(Digest.of(photo), photo(SMALL - 1));
        assertEquals(1, tests.report().links().size(), tests.report().toString());
    }

    /** Somebody puts the photo back from an older copy: nothing is wrong with it, but it was to be gone. */
    @Test
    void bytesThatCameBackAreTold() throws Exception {
        byte[] photo = photo(SMALL);
        String test = test(photo);
        tests.sign(test, "MJ", withdrawn(test, photo));
        takeAway(Digest.of(photo), photo);
        LedgerReport report = tests.report();
        assertTrue(report.sound(), report.toString());
        assertTrue(report.withdrawn().get(0).reason().contains("its bytes are still here and have to be erased"), report.withdrawn().toString());
    }

    @Test
    void nothingIsErasedThatNobodyWithdrew() throws Exception {
        byte[] photo = photo(SMALL);
        String test = test(photo);
        try (SqliteLedger ledger = SqliteLedger.open(tests.file())) {
            assertThrows(WithdrawalMissingException.class, () -> ledger.erase(new TestId(test), Digest.of(photo)));
            assertEquals(SMALL, ledger.document(Digest.of(photo)).orElseThrow().length);
        }
    }
}
