package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.benchwright.ledger.DocumentKind;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerPlaceTakenException;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.LedgerVersionException;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.SharedPlace;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.internal.PostgresDatabase;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The shared store: the same contract on a real server, and what is its own. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PostgresLedgerTest extends LedgerContractTest {

    private PostgresServer server;
    private String database;

    @BeforeAll
    void start() throws Exception {
        server = PostgresServer.start();
    }

    @AfterAll
    void stop() throws Exception {
        server.close();
    }

    @Override
    Ledger openNew() throws Exception {
        database = server.newDatabase();
        PostgresLedger.install(server.owned(database), PostgresServer.BENCH);
        return connected();
    }

    @Override
    Ledger another() throws LedgerException {
        return connected();
    }

    @Override
    Path copied() throws Exception {
        return copy("contract.ledger");
    }

    private PostgresLedger connected() throws LedgerException {
        return PostgresLedger.open(server.shared(database));
    }

    private long number(String sql) throws SQLException {
        try (Connection connection = server.connect(database, PostgresServer.OWNER)) {
            return Counting.number(connection, sql);
        }
    }

    @Override
    long documents() throws Exception {
        return number("SELECT count(*) FROM document");
    }

    private Path copy(String name) throws Exception {
        Path file = folder.resolve(name);
        try (PostgresLedger ledger = connected()) {
            ledger.copyTo(file);
        }
        return file;
    }

    @Test
    void aBenchsLoginCanReadAndAddAndNothingElse() throws Exception {
        sample().carryOut(2, 4);
        try (Connection bench = server.connect(database, PostgresServer.BENCH); Statement statement = bench.createStatement()) {
            for (String table : List.of("event", "document", "signer", "checkpoint")) {
                String key = table.equals("event") ? "position" : "number";
                for (String sql : List.of("UPDATE " + table + " SET " + key + " = 99", "DELETE FROM " + table, "TRUNCATE " + table,
                        "DROP TABLE " + table, "ALTER TABLE " + table + " DISABLE TRIGGER ALL", "CREATE TABLE mine (x BIGINT)",
                        "ALTER TABLE " + table + " ADD COLUMN mine BIGINT", "ALTER TABLE " + table + " OWNER TO CURRENT_USER", "DROP TRIGGER "
                        + table + "_kept ON " + table,
                        "ALTER TABLE " + table + " DISABLE TRIGGER " + table + "_kept", "CREATE INDEX mine ON " + table + " (" + key + ")",
                        "CREATE RULE mine AS ON INSERT TO " + table + " DO INSTEAD NOTHING", "DO $$ BEGIN LOCK TABLE " + table
                        + " IN ACCESS EXCLUSIVE MODE; END $$",
                        "CREATE TRIGGER mine BEFORE INSERT ON " + table + " FOR EACH ROW EXECUTE FUNCTION " + table + "_kept()",
                        "CREATE OR REPLACE FUNCTION " + table + "_kept() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RETURN NEW; END $$",
                        "DROP FUNCTION " + table + "_kept() CASCADE", "SELECT * FROM " + table + " FOR UPDATE",
                        "SET session_replication_role = replica",
                        "UPDATE ledger_format SET version = 99", "INSERT INTO ledger_format VALUES (99)", "SET ROLE " + PostgresServer.OWNER,
                        "CREATE SCHEMA mine",
                        "INSERT INTO " + table + " SELECT * FROM " + table + " ON CONFLICT (" + key + ") DO UPDATE SET " + key + " = 99")) {
                    SQLException refused = assertThrows(SQLException.class, () -> statement.execute(sql), sql);
                    assertEquals("42501", refused.getSQLState(), sql + ": " + refused.getMessage());
                }
            }
            assertThrows(SQLException.class, () -> statement.execute("INSERT INTO event SELECT * FROM event WHERE position = 1"));
        }
    }

    @Test
    void theTablesRefuseChangesEvenFromTheirOwner() throws Exception {
        sample().carryOut(2, 4);
        for (String table : List.of("event", "document", "signer", "checkpoint")) {
            String key = table.equals("event") ? "position" : "number";
            for (String sql : List.of("UPDATE " + table + " SET " + key + " = 99 WHERE " + key + " = 1", "DELETE FROM " + table,
                    "TRUNCATE " + table + " CASCADE")) {
                assertThrows(SQLException.class, () -> server.sql(database, sql), sql);
            }
        }
        assertEquals(7, number("SELECT count(*) FROM event"));
    }

    @Test
    void largeAttachmentsLieInTheDatabase() throws Exception {
        byte[] photo = new byte[300 << 10];
        new Random(1).nextBytes(photo);
        assertEquals(photo.length, ledger().document(ledger().keep(photo, DocumentKind.ATTACHMENT)).orElseThrow().length);
        assertEquals(photo.length, number("SELECT length(content) FROM document"));
    }

    @Test
    void aCopyIsTheSameLedgerAndVerifies() throws Exception {
        sample().carryOut(3, 6);
        ledger().keep(new byte[300 << 10], DocumentKind.ATTACHMENT);
        Path copy = copy("copy.ledger");
        assertTrue(LedgerVerifier.verify(VerificationRequest.of(copy).against(List.of(new LedgerProofs(ledger()).latest()))).clean());
        try (Ledger embedded = SqliteLedger.openReadOnly(copy)) {
            assertEquals(ledger().tests(), embedded.tests());
            assertEquals(ledger().checkpoints(), embedded.checkpoints());
            for (TestId each : ledger().tests()) {
                assertEquals(ledger().entries(each), embedded.entries(each));
            }
        }
        assertThrows(LedgerPlaceTakenException.class, () -> copy("copy.ledger"), "nothing is overwritten");
    }

    @Test
    void whatAnAdministratorChangesIsFoundInTheCopy() throws Exception {
        sample().carryOut(3, 6);
        server.sql(database, "ALTER TABLE event DISABLE TRIGGER ALL", "UPDATE event SET canonical = set_byte(canonical, 20, 33) WHERE position = 8",
                "ALTER TABLE event ENABLE TRIGGER ALL");
        assertFalse(LedgerVerifier.verify(VerificationRequest.of(copy("changed.ledger"))).clean());
        server.sql(database, "ALTER TABLE event DISABLE TRIGGER ALL", "DELETE FROM event WHERE position = 9", "ALTER TABLE event ENABLE TRIGGER ALL");
        LedgerDamagedException named = assertThrows(LedgerDamagedException.class, () -> copy("removed.ledger"));
        assertTrue(named.getMessage().startsWith("Row 10 of event"), named.getMessage());
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(), left.map(file -> file.getFileName().toString()).filter(name -> name.startsWith("removed.ledger")).toList(),
                    "half a copy would verify as a ledger in which nothing was done yet");
        }
    }

    @Test
    void whatIsNoLedgerOrANewerOneOrNotThereIsToldPlainly() throws Exception {
        String empty = server.newDatabase();
        assertThrows(LedgerFormatException.class, () -> PostgresLedger.open(server.shared(empty)));
        server.sql(database, "INSERT INTO ledger_format VALUES (99)");
        assertThrows(LedgerVersionException.class, this::connected);
        assertThrows(LedgerException.class, () -> PostgresLedger.open(server.shared("nowhere")));
        assertThrows(LedgerException.class, () -> PostgresLedger.open(new SharedPlace(server.url(database), PostgresServer.BENCH, "wrong")));
        LedgerException elsewhere = assertThrows(LedgerException.class, () -> PostgresLedger.open(new SharedPlace("jdbc:sqlite:x", "a", "b")));
        assertTrue(elsewhere.getMessage().contains("not the address"), elsewhere.getMessage());
    }

    @Test
    void aLedgerOfAnOlderFormatIsBroughtUpToDateByItsOwnerOnce() throws Exception {
        sample().carryOut(2, 4);
        server.sql(database, "DROP TRIGGER event_chain ON event", "DROP FUNCTION event_chain()", "UPDATE ledger_format SET version = 1");
        LedgerException older = assertThrows(LedgerVersionException.class, this::connected);
        assertTrue(older.getMessage().contains("Have its owner bring it up to date"), older.getMessage());
        for (int i = 0; i < 2; i++) {
            PostgresLedger.migrate(server.owned(database));
        }
        assertEquals(2, number("SELECT max(version) FROM ledger_format"));
        try (PostgresLedger now = connected()) {
            new Register(now, sample().key()).begin();
        }
        assertEquals(List.of(), LedgerVerifier.verify(VerificationRequest.of(copy("migrated.ledger"))).faults());
        String strange = "INSERT INTO event SELECT position + 100, 'X-1', 1, instant, sitting, elapsed, actor, role, kind, link, subtree, "
                + "canonical FROM event WHERE position = 1";
        assertThrows(SQLException.class, () -> server.sql(database, strange));
    }

    /** States from PostgreSQL's own list (appendix "Error Codes"). */
    @ParameterizedTest
    @CsvSource({"53100, LedgerFullException", "53200, LedgerFullException", "53300, LedgerUnreachableException", "57P01, LedgerUnreachableException",
        "57P03, LedgerUnreachableException", "08006, LedgerUnreachableException", "28P01, LedgerUnreachableException",
                "25006, LedgerReadOnlyException",
        "42501, LedgerReadOnlyException", "42P01, LedgerDamagedException", "40001, LedgerBusyException", "55P03, LedgerBusyException",
        "XX001, LedgerDamagedException", "3D000, LedgerFormatException", "P0001, LedgerException"})
    void eachStateHasItsExceptionAndWords(String state, String exception) {
        LedgerException translated = PostgresDatabase.translated(new SQLException("FATAL: why\n  more for developers", state),
                "jdbc:postgresql://db.example/ledger?password=secret");
        assertEquals(exception, translated.getClass().getSimpleName());
        assertTrue(translated.getMessage().contains("jdbc:postgresql://db.example/ledger"), translated.getMessage());
        assertFalse(translated.getMessage().contains("secret"));
        assertFalse(translated.getMessage().contains("for developers"), translated.getMessage());
    }

    @Test
    void aLostConnectionLosesNothingThatWasAcknowledged() throws Exception {
        ledger().append(test(), 0, List.of(sample().draft(test(), "opened", "{}")));
        server.sql("postgres", "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '" + database + "'");
        assertThrows(LedgerException.class, () -> ledger().append(test(), 1, List.of(sample().observation(test(), 1))));
        try (PostgresLedger again = connected()) {
            assertEquals(1, again.lastSequence(test()));
            again.append(test(), 1, List.of(sample().observation(test(), 1)));
            assertEquals(2, again.entries(test()).size());
        }
    }
}
