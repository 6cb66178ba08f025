package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchwright.core.Digest;
import org.benchwright.ledger.BenchKeyException;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Fault;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.VerificationRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What somebody lays beside a ledger where SQLite, or verification, looks for a file of its own. */
class OddFilesBesideTest {

    /** Long: an end is waited for, not a speed. */
    private static final Duration PATIENCE = Duration.ofMinutes(1);

    @TempDir
    Path folder;

    private Path ledger;

    @BeforeEach
    void build() throws Exception {
        ledger = SampleLedger.build(folder, 2, 3);
    }

    private Path beside(String suffix) {
        return ledger.resolveSibling(ledger.getFileName() + suffix);
    }

    private static void pipe(Path place) throws IOException, InterruptedException {
        Files.deleteIfExists(place);
        int made = -1;
        try {
            made = new ProcessBuilder("mkfifo", place.toString()).start().waitFor();
        } catch (IOException none) {
            // A system without named pipes has no such trouble.
        }
        assumeTrue(made == 0, "no named pipes here");
    }

    /** All that verification says. */
    private String told() throws LedgerException {
        return LedgerVerifier.verify(VerificationRequest.of(ledger)).faults().stream().map(Fault::words).collect(Collectors.joining("; "));
    }

    private static <T extends Exception> void soon(Class<T> type, Executable work) {
        assertTimeoutPreemptively(PATIENCE, () -> assertThrows(type, work));
    }

    /** Whoever opens a named pipe waits until somebody writes to it. */
    @ParameterizedTest
    @ValueSource(strings = {"-journal", "-wal", "-shm"})
    void nobodyWaitsInAPipe(String suffix) throws Exception {
        pipe(beside(suffix));
        assertTrue(assertTimeoutPreemptively(PATIENCE, this::told).contains("no ordinary file"));
        soon(LedgerDamagedException.class, () -> SqliteLedger.openReadOnly(ledger).close());
        soon(LedgerDamagedException.class, () -> SqliteLedger.open(ledger).close());
    }

    @Test
    void aPipeInThePlaceOfTheLedgerIsNone() throws Exception {
        pipe(ledger);
        soon(LedgerFormatException.class, () -> SqliteLedger.open(ledger).close());
        soon(LedgerFormatException.class, () -> SqliteLedger.openReadOnly(ledger).close());
    }

    @Test
    void nobodyWaitsInAPipeInThePlaceOfAnAttachment() throws Exception {
        Path attachment = SampleLedger.keptBeside(ledger);
        Digest digest = Digest.of(Files.readAllBytes(attachment));
        pipe(attachment);
        try (Ledger reader = SqliteLedger.openReadOnly(ledger)) {
            soon(LedgerDamagedException.class, () -> reader.document(digest));
        }
        assertTrue(assertTimeoutPreemptively(PATIENCE, this::told).contains("can't be read"));
    }

    @Test
    void aPipeOrSomethingEndlessInThePlaceOfTheBenchKeyIsNone() throws Exception {
        Path key = folder.resolve(BenchKeyStore.PUBLIC_FILE);
        try (RandomAccessFile sparse = new RandomAccessFile(key.toFile(), "rw")) {
            sparse.setLength(3L << 30);
        }
        soon(BenchKeyException.class, () -> VerificationRequest.of(ledger));
        pipe(key);
        soon(BenchKeyException.class, () -> VerificationRequest.of(ledger));
    }

    /** The journal puts the ledger back for whoever may write, and a reader, who may not, sees it as it is. */
    @Test
    void aJournalThatWouldUndoWhatWasVerifiedIsTold() throws Exception {
        byte[] sound = Files.readAllBytes(ledger);
        Path journal = beside("-journal");
        byte[] undoing;
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("PRAGMA journal_mode = DELETE").behindTheTriggers(work -> work.run("UPDATE event SET actor = 'RB' WHERE position = 2"));
            tamper.run("PRAGMA cache_size = 1").run("PRAGMA synchronous = FULL").run("BEGIN IMMEDIATE");
            tamper.run("CREATE TABLE much AS SELECT randomblob(100000) FROM event");
            undoing = Files.readAllBytes(journal);
            tamper.run("ROLLBACK");
        }
        Files.write(ledger, sound);
        Files.write(journal, undoing);
        assertTrue(told().contains("bench.ledger-journal"), told());
        assertThrows(LedgerDamagedException.class, () -> SqliteLedger.openReadOnly(ledger));
        assertThrows(LedgerDamagedException.class, () -> SqliteLedger.open(ledger));
        Files.delete(journal);
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(ledger)).clean());
    }

    @Test
    void aJournalThatIsDoneWithIsHarmless() throws Exception {
        Files.write(beside("-journal"), new byte[512]);
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(ledger)).clean());
        SqliteLedger.open(ledger).close();
    }

    /** SQLite takes no notice of it; the tables are not as the program makes them all the same. */
    @Test
    void anIndexThatIsListedTwiceIsFound() throws Exception {
        try (Tamper tamper = Tamper.with(ledger)) {
            tamper.run("PRAGMA writable_schema = ON");
            tamper.run("INSERT INTO sqlite_master SELECT * FROM sqlite_master WHERE name = 'sqlite_autoindex_event_1'");
        }
        Set<FaultKind> kinds = LedgerVerifier.verify(VerificationRequest.of(ledger)).faults().stream().map(Fault::kind).collect(Collectors.toSet());
        assertEquals(Set.of(FaultKind.SAFEGUARDS_CHANGED), kinds);
    }
}
