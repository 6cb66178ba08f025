package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerBackup;
import org.benchwright.ledger.LedgerBusyException;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerMissingException;
import org.benchwright.ledger.LedgerOptions;
import org.benchwright.ledger.LedgerReadOnlyException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.LedgerVersionException;
import org.benchwright.ledger.Projection;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.internal.SqliteErrors;
import org.benchwright.ledger.internal.SqliteFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteErrorCode;

/** Files that are no ledger, places that refuse, disks that are full: each has an exception and words of its own. */
class OpeningTest {

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("bench.ledger");
    }

    @Test
    void readingAMissingLedgerMakesNothing() throws Exception {
        Path missing = folder.resolve("no").resolve("such.ledger");
        assertThrows(LedgerMissingException.class, () -> SqliteLedger.openReadOnly(missing));
        assertThrows(LedgerMissingException.class, () -> SqliteLedger.openExisting(missing));
        assertThrows(LedgerMissingException.class, () -> LedgerVerifier.verify(VerificationRequest.of(missing)));
        assertEquals(List.of(), list(folder));
    }

    @Test
    void aFileOfAnotherKindIsRefusedAndLeftAsItIs() throws Exception {
        byte[] content = "family tarn-c16 { }\n".repeat(300).getBytes(StandardCharsets.UTF_8);
        Files.write(file(), content);
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.open(file()));
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.openReadOnly(file()));
        assertArrayEquals(content, Files.readAllBytes(file()));
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.open(folder));
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.openReadOnly(folder));
    }

    @Test
    void aDatabaseOfAnotherProgramIsRefusedAndLeftAsItIs() throws Exception {
        try (Tamper other = Tamper.with(file())) {
            other.run("CREATE TABLE event (position INTEGER)");
        }
        byte[] content = Files.readAllBytes(file());
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.open(file()));
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.openReadOnly(file()));
        assertArrayEquals(content, Files.readAllBytes(file()));
        assertEquals(List.of("bench.ledger", "bench.lock"), list(folder));
    }

    @Test
    void anEmptyFileIsNoLedgerToReadAndBecomesOneToWrite() throws Exception {
        Files.createFile(file());
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.openReadOnly(file()));
        assertThrows(LedgerFormatException.class, () -> SqliteLedger.openExisting(file()));
        assertEquals(0, Files.size(file()), "it was left as it is");
        SqliteLedger.open(file()).close();
        SqliteLedger.openExisting(file()).close();
        SqliteLedger.openReadOnly(file()).close();
    }

    @Test
    void aNewerFormatIsRefused() throws Exception {
        SampleLedger.build(folder, 2, 3);
        try (Tamper future = Tamper.with(file())) {
            future.run("PRAGMA user_version = 3");
        }
        LedgerException refused = assertThrows(LedgerVersionException.class, () -> SqliteLedger.open(file()));
        assertTrue(refused.getMessage().contains("newer release"), refused.getMessage());
        assertThrows(LedgerVersionException.class, () -> SqliteLedger.openReadOnly(file()));
        assertThrows(LedgerVersionException.class, () -> LedgerVerifier.verify(VerificationRequest.of(file())));
    }

    @Test
    void anOlderFormatIsVerifiedAsItIsAndBroughtUpToDateByTheFirstWriter() throws Exception {
        SampleLedger.build(folder, 2, 3);
        try (Tamper past = Tamper.with(file())) {
            past.run("DROP TRIGGER event_chain").run("PRAGMA user_version = 1");
        }
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(file())).faults());
        SqliteLedger.open(file()).close();
        try (Tamper now = Tamper.with(file())) {
            assertEquals(2, now.number("PRAGMA user_version"));
            assertEquals(1, now.number("SELECT count(*) FROM sqlite_master WHERE name = 'event_chain'"));
        }
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(file())).faults());
    }

    @Test
    void aLedgerWithoutItsSafeguardsIsNotWrittenToAnyMore() throws Exception {
        SampleLedger.build(folder, 2, 3);
        try (Tamper tamper = Tamper.with(file())) {
            tamper.run("DROP TRIGGER event_kept");
        }
        LedgerException refused = assertThrows(LedgerDamagedException.class, () -> SqliteLedger.open(file()));
        assertTrue(refused.getMessage().contains("event_kept"), refused.getMessage());
        SqliteLedger.openReadOnly(file()).close();
    }

    @Test
    void aLockedLedgerIsWaitedForAndThenReported() throws Exception {
        SampleLedger.build(folder, 2, 3);
        LedgerOptions impatient = LedgerOptions.standard().withPatience(Duration.ofMillis(50));
        try (Ledger ledger = SqliteLedger.open(file(), impatient); Tamper other = Tamper.with(file())) {
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder));
            TestId test = new TestId("T-22222-22222");
            other.run("BEGIN IMMEDIATE");
            assertThrows(LedgerBusyException.class, () -> ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}"))));
            other.run("ROLLBACK");
            ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}")));
        }
    }

    @Test
    void aFullDiskLosesNothingThatWasAcknowledged() throws Exception {
        SampleLedger.build(folder, 2, 3);
        long pages;
        try (Tamper look = Tamper.with(file())) {
            pages = look.number("PRAGMA page_count");
        }
        TestId test;
        long kept = 0;
        try (Ledger ledger = SqliteLedger.open(file(), LedgerOptions.standard().withMostPages(pages + 4))) {
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder));
            test = new TestId("T-22222-22222");
            LedgerException full = null;
            while (full == null && kept < 1000) {
                try {
                    ledger.append(test, kept, List.of(sample.observation(test, (int) kept)));
                    kept++;
                } catch (LedgerFullException expected) {
                    full = expected;
                }
            }
            assertInstanceOf(LedgerFullException.class, full);
            assertTrue(full.getMessage().contains("no room"), full.getMessage());
            assertEquals(kept, ledger.entries(test).size());
        }
        assertTrue(kept > 0);
        try (Ledger ledger = SqliteLedger.open(file())) {
            assertEquals(kept, ledger.lastSequence(test));
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder));
            ledger.append(test, kept, List.of(sample.observation(test, 0)));
        }
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(file())).clean());
    }

    @Test
    void aFileThatIsTakenAwayOrExchangedWhileWorkGoesOnIsNoticedAtTheNextEntry() throws Exception {
        SampleLedger.build(folder, 2, 3);
        TestId test = new TestId("T-22222-22222");
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        try (Ledger ledger = SqliteLedger.open(file())) {
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder));
            ledger.append(test, 0, List.of(sample.draft(test, "opened", "{}")));
            Files.move(file(), elsewhere.resolve("bench.ledger"));
            LedgerException gone = assertThrows(LedgerMissingException.class, () -> ledger.append(test, 1, List.of(sample.observation(test, 1))));
            assertTrue(gone.getMessage().contains("is not kept"), gone.getMessage());
            Files.writeString(file(), "another");
            assertThrows(LedgerMissingException.class, () -> ledger.append(test, 1, List.of(sample.observation(test, 1))));
            Files.delete(file());
            Files.move(elsewhere.resolve("bench.ledger"), file());
            ledger.append(test, 1, List.of(sample.observation(test, 1)));
        }
        assertEquals(7L, LedgerVerifier.verify(VerificationRequest.of(file())).events());
    }

    /** SQLite follows a link; key, attachments and what somebody laid beside the ledger are where it leads to. */
    @Test
    void aLinkToALedgerIsThatLedgerWithAllThatLiesBesideIt() throws Exception {
        Path home = Files.createDirectory(folder.resolve("home"));
        Path ledger = SampleLedger.build(home, 2, 3);
        Path photo = SampleLedger.keptBeside(ledger);
        Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        Path link = Files.createSymbolicLink(elsewhere.resolve("today.ledger"), ledger);
        assertEquals(BenchFolder.of(ledger), BenchFolder.of(link));
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(link)).faults());
        try (Ledger open = SqliteLedger.open(link)) {
            assertEquals(300 << 10, open.document(Digest.of(Files.readAllBytes(photo))).orElseThrow().length);
            new SampleLedger(open, BenchKeyStore.openOrCreate(BenchFolder.of(link).path()), 5).carryOut(2, 3);
            open.keep(new byte[301 << 10], DocumentKind.ATTACHMENT);
        }
        LedgerBackup.write(link, folder.resolve("backup"), true);
        for (Path each : List.of(ledger, link, folder.resolve("backup").resolve("bench.ledger"))) {
            assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(each)).faults());
        }
        assertEquals(List.of("today.ledger"), list(elsewhere));
        assertEquals(Projection.besides(ledger), Projection.besides(link));
        Files.write(home.resolve("bench.ledger-journal"), new byte[] {1});
        assertThrows(LedgerDamagedException.class, () -> SqliteLedger.openReadOnly(link));
    }

    @Test
    void aPlaceThatCannotBeMadeIsReported() throws Exception {
        Files.createFile(folder.resolve("file"));
        assertThrows(LedgerReadOnlyException.class, () -> SqliteLedger.open(folder.resolve("file").resolve("bench.ledger")));
    }

    @Test
    void aFileWithoutTheRightToWriteIsReportedAtOnce() throws Exception {
        SampleLedger.build(folder, 2, 3);
        assertTrue(file().toFile().setReadOnly());
        if (Files.isWritable(file())) {
            // The superuser may write to it all the same.
            SqliteLedger.open(file()).close();
        } else {
            assertThrows(LedgerReadOnlyException.class, () -> SqliteLedger.open(file()));
        }
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(file())).clean());
    }

    @Test
    void namesWithSpecialCharactersAreOnlyNames() throws Exception {
        Path odd = folder.resolve("P\u00e9rion & S\u00f6hne").resolve("a?mode=memory#1%20 b.ledger");
        try (Ledger ledger = SqliteLedger.open(odd)) {
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(odd.getParent()));
            sample.carryOut(2, 3);
        }
        assertTrue(Files.size(odd) > 0);
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(odd)).clean());
    }

    /** Result codes from SQLite's own list (sqlite.org, "Result and Error Codes"). */
    @ParameterizedTest
    @CsvSource({"SQLITE_BUSY, LedgerBusyException", "SQLITE_LOCKED, LedgerBusyException", "SQLITE_BUSY_SNAPSHOT, LedgerBusyException",
        "SQLITE_READONLY, LedgerReadOnlyException", "SQLITE_READONLY_DIRECTORY, LedgerReadOnlyException",
        "SQLITE_CANTOPEN, LedgerReadOnlyException", "SQLITE_PERM, LedgerReadOnlyException", "SQLITE_FULL, LedgerFullException",
        "SQLITE_NOTADB, LedgerFormatException", "SQLITE_CORRUPT, LedgerDamagedException", "SQLITE_IOERR, LedgerException"})
    void eachResultCodeHasItsException(SQLiteErrorCode code, String exception) {
        LedgerException translated = SqliteErrors.translate(new SQLException("why", "state", code.code), file());
        assertEquals(exception, translated.getClass().getSimpleName());
        assertTrue(translated.getMessage().contains(file().toString()), translated.getMessage());
    }

    @Test
    void aFolderThatCannotBeWrittenToIsReadAsItIs() throws Exception {
        Path ledger = SampleLedger.build(folder, 2, 3);
        try (SqliteFile refusing = SqliteFile.openWherePlaceRefuses(ledger, LedgerOptions.standard())) {
            assertEquals(5L, refusing.read(Counting::events));
        }
        assertFalse(list(folder).contains("bench.ledger-wal"));
    }

    @Test
    void aFolderThatCannotBeWrittenToIsReadWithTheLogThatLiesBeside() throws Exception {
        Path copy = Files.createDirectory(folder.resolve("copy"));
        try (Ledger ledger = SqliteLedger.open(file())) {
            new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder)).carryOut(2, 3);
            // The log is not yet in the file, as after a power cut.
            Files.copy(folder.resolve("bench.ledger"), copy.resolve("bench.ledger"));
            Files.copy(folder.resolve("bench.ledger-wal"), copy.resolve("bench.ledger-wal"));
        }
        try (SqliteFile refusing = SqliteFile.openWherePlaceRefuses(copy.resolve("bench.ledger"), LedgerOptions.standard())) {
            assertEquals(5L, refusing.read(Counting::events));
        }
        assertEquals(List.of("bench.ledger", "bench.ledger-wal"), list(copy));
    }

    private static List<String> list(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
