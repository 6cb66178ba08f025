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
import java.time.Duration;
import java.time.Year;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.record.RecordFact;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.WithdrawalMissingException;
import org.benchwright.ledger.YearArchive;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.LedgerReport;
import org.benchwright.workshop.Receipts;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.internal.ReceiptCodec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A photo of a receipt or a repair that shows a person is taken away: rightly, without the right to, without an event, and in copies. */
class WithdrawnHouseFileTest extends WithSealedTests {

    private static final int SMALL = 2000;
    private static final int LARGE = 400 << 10;
    private static final Station STATION = new Station("bench 2", "Benchwright 0.1.0");
    private static final Actor QN = new Actor("QN", Role.TECHNICIAN);

    private final ReceiptCodec codec = new ReceiptCodec();

    private interface Entering {
        void into(Receipts receipts, KeptFile photo) throws Exception;
    }

    private Digest entered(byte[] photo, Entering entering) throws Exception {
        Path file = Files.write(folder.resolve("face.jpg"), photo);
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            Receipts receipts = ledger.receipts(STATION, time.benchTime());
            entering.into(receipts, receipts.keep(file));
        }
        Files.delete(file);
        return Digest.of(photo);
    }

    private static ReceiptFact.Received unit(KeptFile photo) {
        return new ReceiptFact.Received("O-114", "Millbrook", "C16-004711", Plate.READ, Optional.of("tarn_c16"), "stops when warm", "", "",
                List.of(photo), Optional.empty());
    }

    private Digest received(byte[] photo) throws Exception {
        return entered(photo, (receipts, file) -> receipts.receive(unit(file), QN));
    }

    private ReceiptBook withdraw(String person, long event, Digest file) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            return ledger.houseFiles(time.benchTime()).withdraw(event, file, "a face can be seen", Approved.by(person));
        }
    }

    @ParameterizedTest
    @CsvSource({"2000, MJ, auditor MJ", "409600, KM, supervisor KM"})
    void theBytesOfAReceiptsPhotoGoAndDigestReasonAndSignatureStay(int size, String person, String actor) throws Exception {
        byte[] photo = photo(size);
        Digest digest = received(photo);
        assertTrue(found(folder, photo));
        ReceiptBook book = withdraw(person, 1, digest);
        assertFalse(found(folder, photo), "neither in the ledger, nor in its log, nor beside it");
        assertEquals(person, book.withdrawn(digest).orElseThrow().by().id());
        LedgerReport report = tests.report();
        assertTrue(report.sound(), report.toString());
        assertEquals(List.of("attachment " + digest.hex() + " was withdrawn by " + actor + ": a face can be seen"), reasons(report.withdrawn()));
        assertEquals("B-RECEIPTS", report.withdrawn().get(0).test());
        try (BenchLedger ledger = BenchLedger.openReadOnly(tests.file())) {
            assertEquals(book.withdrawn(digest), ledger.receiptBook().withdrawn(digest), "and it is read back");
        }
        received(photo(SMALL - 1));
        tests.accepted();
        assertTrue(tests.report().sound(), "and work goes on");
    }

    private int ended() throws Exception {
        try (BenchLedger ledger = BenchLedger.open(tests.file())) {
            return ledger.houseFiles(time.benchTime()).endWithdrawals();
        }
    }

    /** The power goes between signature and erasure, or between the database and the file beside it. */
    @ParameterizedTest
    @CsvSource({"2000, false", "409600, true"})
    void aWithdrawalThatWasBrokenOffIsEnded(int size, boolean outOfTheTable) throws Exception {
        byte[] photo = photo(size);
        Digest digest = received(photo);
        assertEquals(0, ended(), "nobody withdrew it");
        forge(tests.key("MJ"), new Actor("MJ", Role.AUDITOR), away(digest), Meaning.WITHDRAWN);
        if (outOfTheTable) {
            ErasedBytes.takeAway(tests.file(), digest, asIfWithdrawn());
        }
        assertTrue(tests.report().withdrawn().get(0).reason().contains("its bytes are still here"), tests.report().withdrawn().toString());
        assertTrue(found(folder, photo));
        assertEquals(1, ended());
        assertFalse(found(folder, photo));
        assertTrue(tests.report().sound(), tests.report().toString());
        assertEquals(0, ended(), "nothing is left");
    }

    @Test
    void aRepairsPhotoGoesToo() throws Exception {
        byte[] photo = photo(SMALL);
        String rejected = tests.rejected();
        Digest digest = entered(photo, (receipts, file) -> receipts.repaired(rejected, "fuse F2", List.of(), List.of(file), QN));
        withdraw("MJ", 1, digest);
        assertFalse(found(folder, photo));
        assertSound();
    }

    @Test
    void copiesArchiveAndBackupCarryIt() throws Exception {
        byte[] photo = photo(LARGE);
        tests.accepted();
        withdraw("MJ", 1, received(photo));
        LedgerBackup.write(tests.file(), folder.resolve("backup"), false);
        LedgerBackup.restore(folder.resolve("backup"), folder.resolve("again").resolve("bench.ledger"));
        LedgerReport restored = BenchLedger.verify(folder.resolve("again").resolve("bench.ledger"));
        assertTrue(restored.sound(), restored.toString());
        assertEquals(1, restored.withdrawn().size());
        try (SqliteLedger ledger = SqliteLedger.openReadOnly(tests.file())) {
            YearArchive.Content content = YearArchive.write(ledger, Year.of(2026), folder.resolve("2026.zip"));
            assertEquals(List.of(), content.faults());
            assertEquals(content.events(), YearArchive.check(folder.resolve("2026.zip")).events());
        }
        assertFalse(found(folder, photo));
    }

    /** The same photo was attached at a step and belongs to the receipt; its bytes are kept once. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void whatATestAndAReceiptShowGoesOnceAndTheArchiveTakesIt(boolean byTheTest) throws Exception {
        byte[] photo = photo(SMALL);
        Digest digest = received(photo);
        tests.attaching(photo);
        String test = tests.attached();
        Files.deleteIfExists(folder.resolve("bench/plate.jpg"));
        if (byTheTest) {
            tests.sign(test, "MJ", new RecordFact.AttachmentWithdrawn(tests.record(test).attachments().get(0).event(), digest, "a face can be seen"));
        } else {
            withdraw("MJ", 1, digest);
        }
        assertFalse(found(folder, photo));
        assertSound();
        try (SqliteLedger ledger = SqliteLedger.openReadOnly(tests.file())) {
            assertEquals(List.of(), YearArchive.write(ledger, Year.of(2026), folder.resolve("2026.zip")).faults());
            YearArchive.Content before = YearArchive.write(ledger, Year.of(2025), folder.resolve("2025.zip"));
            assertEquals(List.of(), before.faults());
            assertEquals(byTheTest ? 1 : 0, before.tests(), "the test that withdrew it goes along with the book");
        }
    }

    // ---- refused

    private String refusal(String person, long event, Digest file) {
        return assertThrows(RefusedException.class, () -> withdraw(person, event, file)).getMessage();
    }

    @Test
    void itTakesTheRoleAndSomebodyWhoEnteredNothingAboutIt() throws Exception {
        byte[] photo = photo(SMALL);
        Digest digest = entered(photo, (receipts, file) -> {
            receipts.receive(unit(file), QN);
            receipts.correct(1, "another order", unit(file), new Actor("mj", Role.TECHNICIAN));
        });
        assertTrue(refusal("RB", 1, digest).startsWith("RB may not withdraw attachments."));
        assertTrue(refusal("MJ", 1, digest).startsWith("MJ entered something about a receipt or repair that shows this file."));
        assertEquals("Event 3 of the book of receipts kept no such file.", refusal("KM", 3, digest));
        assertEquals("Event 1 of the book of receipts kept no such file.", refusal("KM", 1, Digest.of(new byte[] {9})));
        withdraw("KM", 2, digest);
        assertEquals("This file was withdrawn by KM already.", refusal("KM", 1, digest));
        assertSound();
    }

    @Test
    void nothingIsErasedThatNobodyWithdrew() throws Exception {
        Digest digest = received(photo(SMALL));
        try (SqliteLedger ledger = SqliteLedger.open(tests.file())) {
            assertThrows(WithdrawalMissingException.class, () -> ledger.erase(TestId.RECEIPTS, digest));
            assertEquals(SMALL, ledger.document(digest).orElseThrow().length);
        }
    }

    // ---- attacks

    private void forge(Signer key, Actor actor, ReceiptFact fact, Meaning meaning) throws Exception {
        try (Ledger ledger = SqliteLedger.open(tests.file())) {
            ledger.appendSigned(new EntryDraft(TestId.RECEIPTS, time.instant(), 1, Duration.ZERO, actor, codec.kind(fact), codec.payload(fact)),
                    ledger.lastSequence(TestId.RECEIPTS), new Signing(key, meaning, actor.toString(), tests.benchKey()));
        }
    }

    private void assertOneDecision(Digest digest, String words) throws Exception {
        ErasedBytes.takeAway(tests.file(), digest, asIfWithdrawn());
        LedgerReport report = tests.report();
        assertFalse(report.sound());
        assertEquals(1, report.decisions().size(), report.toString());
        assertTrue(report.decisions().get(0).reason().contains(words), report.decisions().toString());
    }

    private static ReceiptFact away(Digest digest) {
        return new ReceiptFact.AttachmentWithdrawn(1, digest, "a face");
    }

    @Test
    void whatIsTakenAwayWithoutAnEventIsAFault() throws Exception {
        Digest digest = received(photo(SMALL));
        ErasedBytes.takeAway(tests.file(), digest, asIfWithdrawn());
        assertEquals(List.of("The bytes of attachment " + digest.hex() + " were taken away, and nobody withdrew it."), reasons(tests.report().links()));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', value = {
            "without the role              | QN | RB    | RB | WITHDRAWN | RB may not withdraw attachments.",
            "by who received the unit      | MJ | MJ    | MJ | WITHDRAWN | MJ entered something about a receipt or repair that shows this file.",
            "in the name of another        | QN | RB    | MJ | WITHDRAWN | it claims to be by MJ, but RB has signed it",
            "with the key of the bench     | QN | bench | MJ | WITHDRAWN | nobody whose key was good then has signed it",
            "by what means something else  | QN | MJ    | MJ | REVIEWED  | its signature does not mean \"withdrawn\""})
    void aForgedWithdrawalIsAFault(String how, String receivedBy, String key, String name, Meaning meaning, String words) throws Exception {
        Digest digest = entered(photo(SMALL), (receipts, file) -> receipts.receive(unit(file), new Actor(receivedBy, Role.TECHNICIAN)));
        forge(key.equals("bench") ? tests.benchKey() : tests.key(key), new Actor(name, Role.AUDITOR), away(digest), meaning);
        assertOneDecision(digest, words);
    }

    @Test
    void withdrawnThoughNoReceiptShowsItIsAFault() throws Exception {
        byte[] photo = photo(SMALL);
        tests.attaching(photo);
        tests.attached();
        received(photo(SMALL - 1));
        forge(tests.key("MJ"), new Actor("MJ", Role.AUDITOR), away(Digest.of(photo)), Meaning.WITHDRAWN);
        assertOneDecision(Digest.of(photo), "kept no such file");
    }

    /** A withdrawal that the rules don't take makes the next receipt erase nothing either. */
    @Test
    void aForgedWithdrawalErasesNothing() throws Exception {
        Digest digest = received(photo(SMALL));
        forge(tests.key("RB"), new Actor("RB", Role.AUDITOR), away(digest), Meaning.WITHDRAWN);
        Digest other = entered(photo(SMALL - 1), (receipts, file) -> receipts.correct(1, "a photo more", unit(file), QN));
        withdraw("MJ", 3, other);
        try (SqliteLedger ledger = SqliteLedger.openReadOnly(tests.file())) {
            assertEquals(SMALL, ledger.document(digest).orElseThrow().length);
            assertEquals(Optional.empty(), ledger.document(other));
        }
    }
}
