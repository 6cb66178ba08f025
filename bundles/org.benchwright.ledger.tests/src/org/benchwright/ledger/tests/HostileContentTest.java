package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables full of nonsense: verification ends with faults, never with an exception; reading ends with an exception in plain words. */
class HostileContentTest {

    private static final List<String> TABLES = List.of("event", "document", "signer", "checkpoint");

    @TempDir
    Path folder;

    private Path ledger;

    @BeforeEach
    void build() throws Exception {
        ledger = SampleLedger.build(folder, 2, 4);
    }

    private Verification verify() throws Exception {
        return LedgerVerifier.verify(VerificationRequest.of(ledger));
    }

    /** Tables without types or constraints, each cell holding {@code content}. */
    private void fill(String content) throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("PRAGMA foreign_keys = OFF");
            for (String table : TABLES) {
                tamper.run("CREATE TABLE loose AS SELECT * FROM " + table).run("DROP TABLE " + table)
                        .run("ALTER TABLE loose RENAME TO " + table);
                StringBuilder sql = new StringBuilder("UPDATE " + table + " SET ");
                for (String column : columns(tamper, table)) {
                    sql.append(column).append(" = ").append(content).append(", ");
                }
                tamper.run(sql.substring(0, sql.length() - 2));
            }
        }
    }

    private static List<String> columns(Tamper tamper, String table) throws Exception {
        String joined = new String(tamper.bytes("SELECT group_concat(name) FROM pragma_table_info('" + table + "')"), StandardCharsets.UTF_8);
        return List.of(joined.split(","));
    }

    @ParameterizedTest
    @ValueSource(strings = {"NULL", "''", "'x'", "0", "-1", "9223372036854775807", "-9223372036854775808", "0.5", "9e999", "-9e999",
        "zeroblob(0)", "zeroblob(32)", "zeroblob(1100000)", "randomblob(64)", "CAST(x'C328FF' AS TEXT)", "'a' || char(0) || 'b'",
        "'T-22222-22222'", "'2026-03-02T07:30:00Z'", "'+1000000000-12-31T23:59:59.999999999Z'",
        "CAST('{\"a\":' || printf('%.*c', 100000, '[') AS BLOB)"})
    void nonsenseInEveryCell(String content) throws Exception {
        fill(content);
        Verification verification = verify();
        assertFalse(verification.clean());
        assertTrue(verification.faults().stream().allMatch(fault -> !fault.words().isBlank()));
        assertEquals(7, verification.events());
        try (Ledger reader = SqliteLedger.openReadOnly(ledger)) {
            assertThrows(LedgerDamagedException.class, reader::checkpoints);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"event", "document", "signer", "checkpoint"})
    void aMissingTable(String table) throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("PRAGMA foreign_keys = OFF").run("DROP TABLE " + table);
        }
        Verification verification = verify();
        assertTrue(verification.faults().stream().anyMatch(fault -> fault.kind() == FaultKind.TABLE_UNREADABLE), verification.toString());
        assertTrue(verification.faults().stream().anyMatch(fault -> fault.kind() == FaultKind.SAFEGUARDS_CHANGED));
    }

    @Test
    void aTableWithOtherColumns() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("DROP TABLE event").run("CREATE TABLE event (position)");
        }
        assertTrue(verify().faults().stream().anyMatch(fault -> fault.kind() == FaultKind.TABLE_UNREADABLE));
        try (Ledger reader = SqliteLedger.openReadOnly(ledger)) {
            assertThrows(LedgerDamagedException.class, () -> reader.entries(new TestId("T-22222-22222")));
            assertThrows(LedgerDamagedException.class, reader::tests);
        }
    }

    /** What stands behind a view is worked out while it is read, and may never end. */
    @ParameterizedTest
    @ValueSource(strings = {"event", "document", "signer", "checkpoint"})
    void aViewInThePlaceOfATableIsNotRead(String table) throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("PRAGMA foreign_keys = OFF").run("DROP TABLE " + table)
                    .run("CREATE VIEW " + table + " AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n LIMIT 10) SELECT i AS number FROM n");
        }
        Fault fault = assertDamaged();
        assertTrue(fault.words().contains("(" + table + ")"), fault.words());
    }

    /** Written anew by a tool that keeps texts in another way. */
    @Test
    void textsInAnotherEncoding() throws Exception {
        Path other = folder.resolve("other.db");
        try (Tamper tamper = Tamper.with(other)) {
            tamper.run("PRAGMA encoding = 'UTF-16le'");
            for (String table : TABLES) {
                tamper.run("CREATE TABLE " + table + " AS SELECT 1 AS number");
            }
            tamper.run("PRAGMA application_id = " + 0x42574C47).run("PRAGMA user_version = 2");
        }
        Files.move(other, ledger, StandardCopyOption.REPLACE_EXISTING);
        assertTrue(assertDamaged().words().contains("UTF-16le"));
    }

    private Fault assertDamaged() throws Exception {
        List<Fault> faults = verify().faults();
        assertEquals(List.of(FaultKind.STORE_DAMAGED), faults.stream().map(Fault::kind).toList());
        assertThrows(LedgerDamagedException.class, () -> SqliteLedger.openReadOnly(ledger));
        return faults.get(0);
    }

    @Test
    void anAttachmentThatIsSaidToBeEndlessIsNotReadToItsEnd() throws Exception {
        Path beside = SampleLedger.keptBeside(ledger);
        try (RandomAccessFile file = new RandomAccessFile(beside.toFile(), "rw")) {
            file.setLength(1L << 42);
        }
        Verification verification = assertTimeoutPreemptively(Duration.ofMinutes(2), this::verify);
        assertEquals(List.of(FaultKind.DOCUMENT_CHANGED), verification.faults().stream().map(Fault::kind).toList());
        Path copy = assertTimeoutPreemptively(Duration.ofMinutes(2), () -> LedgerBackup.write(ledger, folder.resolve("backup"), false));
        assertEquals(List.of(FaultKind.DOCUMENT_MISSING),
                LedgerVerifier.verify(VerificationRequest.of(copy)).faults().stream().map(Fault::kind).toList());
        try (Ledger reader = SqliteLedger.openReadOnly(ledger)) {
            Digest digest = Digest.of(new byte[300 << 10]);
            assertThrows(LedgerDamagedException.class, () -> reader.document(digest));
        }
    }

    @Test
    void aFileThatEndsTooEarly() throws Exception {
        byte[] whole = Files.readAllBytes(ledger);
        for (int pages = 1; pages < whole.length / 4096; pages += 3) {
            Files.write(ledger, Arrays.copyOf(whole, pages * 4096));
            assertFalse(verify().clean(), pages + " pages");
        }
    }

    @Test
    void moreFaultsThanAnybodyReadsAreCounted() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.behindTheTriggers(work -> work.run("WITH RECURSIVE n(i) AS (SELECT 8 UNION ALL SELECT i + 1 FROM n WHERE i < 2000) "
                    + "INSERT INTO event SELECT i, 'nonsense', i, '', 1, '', '', '', '', zeroblob(32), zeroblob(32), zeroblob(1) FROM n"));
        }
        Verification verification = verify();
        assertEquals(1000, verification.faults().size());
        assertTrue(verification.faultsLeftOut() > 900, verification.faultsLeftOut() + " left out");
        assertEquals(2000, verification.events());
    }

    @Test
    void anEventThatReadingMeetsDamagedIsNamed() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.behindTheTriggers(work -> work.run("UPDATE event SET canonical = x'7b7d' WHERE position = 3"));
        }
        try (Ledger reader = SqliteLedger.openReadOnly(ledger)) {
            TestId first = reader.tests().get(0);
            LedgerDamagedException damaged = assertThrows(LedgerDamagedException.class, () -> reader.entries(first));
            assertTrue(damaged.getMessage().contains("position 3"), damaged.getMessage());
        }
    }
}
