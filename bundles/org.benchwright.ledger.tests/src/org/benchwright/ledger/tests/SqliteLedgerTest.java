package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.benchwright.core.Digest;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerOptions;
import org.benchwright.ledger.LedgerReadOnlyException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.internal.SqliteFile;
import org.junit.jupiter.api.Test;

/** The embedded store: the contract, and what is its own. */
class SqliteLedgerTest extends LedgerContractTest {

    /** What SQLite says for synchronous = FULL. */
    private static final long FULL = 2;

    private Path file;

    @Override
    Ledger openNew() throws Exception {
        file = folder.resolve("new").resolve("bench.ledger");
        return SqliteLedger.open(file);
    }

    @Override
    long documents() throws Exception {
        try (Tamper look = Tamper.with(file)) {
            return look.number("SELECT count(*) FROM document");
        }
    }

    @Override
    Ledger another() throws LedgerException {
        return SqliteLedger.open(file);
    }

    @Override
    Path copied() {
        return file;
    }

    @Test
    void keepsLargeAttachmentsBesideTheLedger() throws Exception {
        byte[] photo = new byte[300 << 10];
        new Random(1).nextBytes(photo);
        Digest digest = ledger().keep(photo, DocumentKind.ATTACHMENT);
        Path beside = SampleLedger.beside(file, digest);
        assertArrayEquals(photo, Files.readAllBytes(beside));
        assertArrayEquals(photo, ledger().document(digest).orElseThrow());
        Digest plan = ledger().keep(Arrays.copyOf(photo, 290 << 10), DocumentKind.PLAN);
        assertEquals(290 << 10, ledger().document(plan).orElseThrow().length);
        assertThrows(PayloadException.class, () -> ledger().keep(new byte[(64 << 20) + 1], DocumentKind.ATTACHMENT));
    }

    @Test
    void everyTableRefusesUpdateDeleteAndReplace() throws Exception {
        sample().carryOut(2, 4);
        try (Tamper tamper = Tamper.with(file)) {
            for (String table : List.of("event", "document", "signer", "checkpoint")) {
                String key = table.equals("event") ? "position" : "number";
                assertRefused(tamper, "UPDATE " + table + " SET " + key + " = 99 WHERE " + key + " = 1");
                assertRefused(tamper, "DELETE FROM " + table);
                assertRefused(tamper, "INSERT OR REPLACE INTO " + table + " SELECT * FROM " + table + " WHERE " + key + " = 1");
                assertRefused(tamper, "INSERT OR IGNORE INTO " + table + " SELECT * FROM " + table + " WHERE " + key + " = 1");
            }
            assertEquals(7, tamper.number("SELECT count(*) FROM event"));
        }
    }

    private static void assertRefused(Tamper tamper, String sql) {
        assertThrows(SQLException.class, () -> tamper.run(sql), sql);
    }

    /** The statements of an append are kept; one that failed must not stand in the way of the next. */
    @Test
    void anAppendThatTheDatabaseRefusesHindersNoLaterOne() throws Exception {
        TestId id = sample().newTest();
        try (Tamper tamper = Tamper.with(file)) {
            for (int i = 0; i < 3; i++) {
                ledger().append(id, i, List.of(sample().observation(id, i)));
                int next = i + 1;
                EntryDraft refused = sample().observation(id, next);
                tamper.run("CREATE TRIGGER event_never BEFORE INSERT ON event BEGIN SELECT RAISE(ABORT, 'never'); END");
                assertThrows(LedgerException.class, () -> ledger().append(id, next, List.of(refused)));
                tamper.run("DROP TRIGGER event_never");
                assertEquals(next, ledger().lastSequence(id));
            }
        }
        assertEquals(3, ledger().entries(id).size());
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(file)).clean());
    }

    @Test
    void anotherReaderSeesWhatIsWrittenAndCannotWrite() throws Exception {
        try (Ledger reader = SqliteLedger.openReadOnly(file)) {
            assertEquals(List.of(), reader.entries(test()));
            ledger().append(test(), 0, List.of(sample().draft(test(), "opened", "{}")));
            assertEquals(1, reader.entries(test()).size());
            assertThrows(LedgerReadOnlyException.class, () -> reader.append(test(), 1, List.of(sample().observation(test(), 1))));
            assertThrows(LedgerReadOnlyException.class, () -> reader.keep(new byte[0], DocumentKind.PLAN));
        }
    }

    @Test
    void isWrittenForPowerCuts() throws Exception {
        sample().carryOut(2, 4);
        try (Tamper look = Tamper.with(file)) {
            assertEquals("wal", new String(look.bytes("PRAGMA journal_mode"), StandardCharsets.US_ASCII));
        }
        try (SqliteFile written = SqliteFile.openOrCreate(file, LedgerOptions.standard())) {
            long synchronous = written.read(connection -> Counting.number(connection, "PRAGMA synchronous"));
            assertEquals(FULL, synchronous, "each commit waits for the disk");
        }
    }
}
