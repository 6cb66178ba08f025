package org.benchwright.ledger.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.Verification;
import org.benchwright.ledger.VerificationRequest;
import org.sqlite.SQLiteConfig;

/** How fast a ledger is, beside what the JDK and the database driver alone need for the same bytes on the same machine in the same run. */
final class LedgerSpeed {

    private static final int EACH = 500;
    private static final int BATCH = 100;

    private final Path folder;
    private final int events;

    /**
     * Figures, in events a second.
     *
     * @param events   events in the ledger
     * @param bare     rows read by the driver and hashed by the JDK, in one thread
     * @param links    verified in a ledger of open tests, in which nothing is signed: links, places, columns, the tree, the file itself
     * @param signed   signatures of events verified, each with the checkpoint after it, in a ledger of nothing else
     * @param insert   bare durable inserts of the same bytes, one a transaction
     * @param append   events appended, one a transaction
     */
    record Figures(long events, double bare, double links, double signed, double insert, double append) {
        String table() {
            return String.format(Locale.ROOT, "links: %d events, bare %.0f/s, verified %.0f/s (ratio %.2f)%n"
                    + "signatures: %.0f signed events with their checkpoints/s%nappend: bare insert %.0f/s, append %.0f/s (%.2f times as long)",
                    events, bare, links, links / bare, signed, insert, append, insert / append);
        }
    }

    LedgerSpeed(Path folder, int events) {
        this.folder = folder;
        this.events = events;
    }

    Figures measure() throws Exception {
        Path ledger = build();
        bare(ledger);
        double bare = events / bare(ledger);
        verified(ledger);
        double links = events / verified(ledger);
        double signed = signed();
        int writes = Math.max(50, Math.min(500, events / 10));
        double append = writes / append(writes);
        double insert = writes / insert(ledger, writes);
        return new Figures(events, bare, links, signed, insert, append);
    }

    private Path build() throws Exception {
        Path file = folder.resolve("bench.ledger");
        BenchKey key = BenchKeyStore.openOrCreate(folder);
        try (Ledger ledger = SqliteLedger.open(file)) {
            SampleLedger sample = new SampleLedger(ledger, key);
            for (int done = 0; done < events; done += EACH) {
                test(ledger, sample, Math.min(EACH, events - done));
            }
        }
        return file;
    }

    private static void test(Ledger ledger, SampleLedger sample, int size) throws Exception {
        TestId id = sample.newTest();
        for (int at = 0; at < size; at += BATCH) {
            List<EntryDraft> drafts = new ArrayList<>();
            for (int i = at; i < Math.min(at + BATCH, size); i++) {
                drafts.add(sample.observation(id, i));
            }
            ledger.append(id, at, drafts);
        }
    }

    /** A ledger in which each event but the first of a test is signed. */
    private double signed() throws Exception {
        Path home = Files.createDirectory(folder.resolve("signed"));
        int seals = Math.max(20, Math.min(2000, events / 100));
        Path file = home.resolve("bench.ledger");
        try (Ledger ledger = SqliteLedger.open(file)) {
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(home));
            for (int i = 0; i < seals; i++) {
                TestId id = sample.newTest();
                ledger.append(id, 0, List.of(sample.observation(id, i)));
                sample.seal(id, 1);
            }
        }
        verified(file);
        return seals / verified(file);
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    private static double bare(Path ledger) throws Exception {
        long begin = System.nanoTime();
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        String all = "SELECT position, test_id, sequence, instant, sitting, elapsed, actor, role, kind, link, subtree, canonical FROM event ORDER BY position";
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + ledger);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(all)) {
            while (rows.next()) {
                for (int i = 1; i <= 11; i++) {
                    rows.getBytes(i);
                }
                digest.digest(rows.getBytes(12));
            }
        }
        return seconds(begin);
    }

    private static double verified(Path ledger) throws Exception {
        long begin = System.nanoTime();
        Verification found = LedgerVerifier.verify(VerificationRequest.of(ledger));
        if (!found.clean()) {
            throw new IllegalStateException("a sound ledger is found unsound: " + found.faults());
        }
        return seconds(begin);
    }

    private double append(int writes) throws Exception {
        Path file = Files.createDirectory(folder.resolve("append")).resolve("bench.ledger");
        try (Ledger ledger = SqliteLedger.open(file)) {
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(folder));
            TestId id = sample.newTest();
            long begin = System.nanoTime();
            for (int i = 0; i < writes; i++) {
                ledger.append(id, i, List.of(sample.observation(id, i)));
            }
            return seconds(begin);
        }
    }

    private double insert(Path ledger, int writes) throws Exception {
        List<byte[]> rows = new ArrayList<>();
        try (Tamper reader = Tamper.with(ledger)) {
            for (int i = 1; i <= writes; i++) {
                rows.add(reader.bytes("SELECT canonical FROM event WHERE position = " + i));
            }
        }
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + folder.resolve("bare.db"));
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("CREATE TABLE bare (position INTEGER PRIMARY KEY, link BLOB, subtree BLOB, canonical BLOB)");
            long begin = System.nanoTime();
            try (PreparedStatement insert = connection.prepareStatement("INSERT INTO bare VALUES (?, zeroblob(32), zeroblob(32), ?)")) {
                for (int i = 0; i < writes; i++) {
                    insert.setLong(1, i + 1);
                    insert.setBytes(2, rows.get(i));
                    insert.executeUpdate();
                }
            }
            return seconds(begin);
        }
    }
}
