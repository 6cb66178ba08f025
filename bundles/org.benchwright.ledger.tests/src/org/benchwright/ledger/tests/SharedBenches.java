package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchwright.core.Cancellation;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Forwarder;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;

/**
 * Benches, each in a folder of its own, and a shared ledger.
 *
 * @param server   where the shared ledger is
 * @param database its database
 * @param folder   where the benches' folders are
 */
record SharedBenches(PostgresServer server, String database, Path folder) {

    /** An empty shared ledger on {@code server}. */
    static SharedBenches on(PostgresServer server, Path folder) throws Exception {
        String database = server.newDatabase();
        PostgresLedger.install(server.owned(database), PostgresServer.BENCH);
        return new SharedBenches(server, database, folder);
    }

    String url() {
        return server.url(database);
    }

    PostgresLedger shared() throws LedgerException {
        return PostgresLedger.open(server.shared(database));
    }

    Path file(String bench) {
        return folder.resolve(bench).resolve("bench.ledger");
    }

    SqliteLedger open(String bench) throws LedgerException {
        return SqliteLedger.open(file(bench));
    }

    BenchKey key(String bench) throws LedgerException {
        return BenchKeyStore.openOrCreate(folder.resolve(bench));
    }

    /** Work on a bench: tests with documents and seals, the last one open. */
    List<TestId> work(String bench, int tests, int events) throws Exception {
        try (SqliteLedger ledger = open(bench)) {
            // Other ids than those that are there.
            return new SampleLedger(ledger, key(bench), bench.hashCode() + 1000L * ledger.tests().size()).carryOut(tests, events);
        }
    }

    /** Much work on a bench in a short time: sealed tests of many events. */
    void muchWork(String bench, int tests, int events) throws Exception {
        try (SqliteLedger ledger = open(bench)) {
            SampleLedger sample = new SampleLedger(ledger, key(bench), bench.hashCode() + 1000L * ledger.tests().size());
            for (int i = 0; i < tests; i++) {
                sample.many(events);
            }
        }
    }

    /** Forwards what a bench has. */
    Forwarder.Outcome forward(String bench) throws LedgerException {
        try (SqliteLedger ledger = open(bench); PostgresLedger shared = shared()) {
            return new Forwarder(ledger, shared, key(bench), Clock.systemUTC()).run(reached -> { }, Cancellation.never());
        }
    }

    /** A copy of the shared ledger, as verification looks at it. */
    Path copy() throws Exception {
        Path file = Files.createTempDirectory(folder, "copy").resolve("shared.ledger");
        try (PostgresLedger shared = shared()) {
            shared.copyTo(file);
        }
        return file;
    }

    Verification verified() throws Exception {
        return LedgerVerifier.verify(VerificationRequest.of(copy()));
    }

    /** The shared ledger verifies clean and holds every event of every test of these benches once, each test in order. */
    void assertWhole(List<String> benches) throws Exception {
        Path copy = copy();
        Verification verification = LedgerVerifier.verify(VerificationRequest.of(copy));
        assertEquals(List.of(), verification.faults());
        assertTrue(verification.clean());
        long all = 0;
        try (Ledger shared = SqliteLedger.openReadOnly(copy)) {
            for (String bench : benches) {
                all += assertHolds(shared, bench);
            }
            assertEquals(all, verification.events(), "nothing else is there");
        }
    }

    private long assertHolds(Ledger shared, String bench) throws Exception {
        long events = 0;
        try (Ledger own = SqliteLedger.openReadOnly(file(bench))) {
            List<String> order = new ArrayList<>();
            List<String> sharedOrder = new ArrayList<>();
            for (TestId test : own.tests()) {
                List<LedgerEntry> here = own.entries(test);
                List<LedgerEntry> there = shared.entries(test);
                assertEquals(here.stream().map(LedgerEntry::link).toList(), there.stream().map(LedgerEntry::link).toList(), test.value());
                here.forEach(entry -> order.add(entry.position() + " " + entry.link()));
                there.forEach(entry -> sharedOrder.add(entry.position() + " " + entry.link()));
                events += here.size();
            }
            assertEquals(byPosition(order), byPosition(sharedOrder), "in the order in which the bench wrote them");
        }
        return events;
    }

    private static List<String> byPosition(List<String> entries) {
        return entries.stream().sorted(Comparator.comparingLong(entry -> Long.parseLong(entry.split(" ")[0])))
                .map(entry -> entry.split(" ")[1]).toList();
    }
}
