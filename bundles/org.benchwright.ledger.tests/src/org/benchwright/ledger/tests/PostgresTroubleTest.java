package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.benchwright.core.Digest;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.LedgerBusyException;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFullException;
import org.benchwright.ledger.LedgerReadOnlyException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.SharedPlace;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A real server that is full, read-only or held up: what a bench is told, and that nothing acknowledged is lost. */
class PostgresTroubleTest {

    private static final int DOCUMENT = 200 << 10;

    @TempDir
    private Path folder;
    private long samples;

    private static void install(PostgresServer server, String database) throws Exception {
        PostgresLedger.install(server.owned(database), PostgresServer.BENCH);
    }

    private static PostgresLedger open(PostgresServer server, String database) throws LedgerException {
        return PostgresLedger.open(new SharedPlace(server.url(database), PostgresServer.BENCH, PostgresServer.PASSWORD, Optional.empty(),
                Duration.ofSeconds(2)));
    }

    private SampleLedger sample(PostgresLedger ledger) throws Exception {
        // Other ids each time.
        return new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder.resolve("keys")), ++samples);
    }

    private void assertSound(PostgresLedger ledger) throws Exception {
        Path copy = Files.createTempDirectory(folder, "copy").resolve("shared.ledger");
        ledger.copyTo(copy);
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(copy)).faults());
    }

    /** The disk is mounted where only this server sees it, and gone with it. */
    @Test
    void aDiskThatIsReallyFullIsSaidAndNothingAcknowledgedIsLost() throws Exception {
        assumeTrue(PostgresServer.canMount(), "nobody may mount here");
        try (PostgresServer server = PostgresServer.startWithSmallDisk("16m")) {
            String database = server.newDatabaseOnSmallDisk();
            install(server, database);
            try (PostgresLedger ledger = open(server, database)) {
                TestId test = sample(ledger).carryOut(1, 4).get(0);
                List<LedgerEntry> acknowledged = ledger.entries(test);
                List<byte[]> kept = new ArrayList<>();
                LedgerFullException full = assertThrows(LedgerFullException.class, () -> fill(ledger, kept));
                assertTrue(full.getMessage().contains(server.url(database)), full.getMessage());
                assertTrue(kept.size() > 2, "it was not full from the beginning: " + kept.size());
                assertEquals(acknowledged, ledger.entries(test));
                for (byte[] each : kept) {
                    assertArrayEquals(each, ledger.document(Digest.of(each)).orElseThrow());
                }
                assertSound(ledger);
                server.resizeDisk("64m");
                sample(ledger).carryOut(1, 5);
                assertSound(ledger);
            }
        }
    }

    private static void fill(PostgresLedger ledger, List<byte[]> kept) throws LedgerException {
        Random random = new Random(5);
        for (int i = 0; i < 200; i++) {
            byte[] content = new byte[DOCUMENT];
            random.nextBytes(content);
            ledger.keep(content, DocumentKind.ATTACHMENT);
            kept.add(content);
        }
    }

    @Test
    void aServerThatTakesNothingOrIsHeldUpIsToldApartAndWorkGoesOnAfterwards() throws Exception {
        try (PostgresServer server = PostgresServer.start()) {
            String database = server.newDatabase();
            install(server, database);
            try (PostgresLedger ledger = open(server, database)) {
                sample(ledger).carryOut(1, 4);
                server.sql("postgres", "ALTER DATABASE " + database + " SET default_transaction_read_only = on");
                try (PostgresLedger readOnly = open(server, database)) {
                    assertThrows(LedgerReadOnlyException.class, () -> sample(readOnly).carryOut(1, 4));
                    assertEquals(1, readOnly.tests().size(), "reading goes on");
                }
                server.sql("postgres", "ALTER DATABASE " + database + " RESET default_transaction_read_only");
                try (Connection holder = server.connect(database, PostgresServer.OWNER); Statement statement = holder.createStatement()) {
                    holder.setAutoCommit(false);
                    statement.execute("LOCK TABLE event IN EXCLUSIVE MODE");
                    assertThrows(LedgerBusyException.class, () -> sample(ledger).carryOut(1, 4));
                    assertEquals(1, ledger.tests().size(), "reading goes on");
                }
                sample(ledger).carryOut(1, 5);
                assertEquals(2, ledger.tests().size());
                assertSound(ledger);
            }
        }
    }
}
