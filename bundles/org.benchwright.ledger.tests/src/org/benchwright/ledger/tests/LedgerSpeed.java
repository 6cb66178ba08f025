package org.benchwright.ledger.tests;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
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

    /** At least so fast as half of the bare speed; at most so much longer than a bare insert. */
    private static final double LEAST_RATIO = 0.5;
    private static final double MOST_APPEND = 1.5;
    /** More memory than this, compared with the smallest ledger, isn't flat; a higher power of the number of events isn't linear. */
    private static final long FLAT_MIB = 16;
    private static final double LINEAR = 1.1;
    private static final int LOOKS = 8;
    private static final int WRITES = 25;

    private final Path folder;
    private final List<Integer> sizes;

    /**
     * One ledger of open tests, in which nothing is signed.
     *
     * @param events       events in it
     * @param bare         rows a second that the driver reads and the JDK hashes, in one thread
     * @param verified     events a second that are verified: links, places, columns, the tree, the file itself
     * @param store        seconds of that which SQLite takes to check its own file, measured by itself
     * @param bareWork     seconds of processor time that the former took
     * @param verifiedWork that the latter took, all threads together, those of the Java machine included
     * @param held         most memory in use while it was verified, garbage aside, in MiB
     */
    record Links(long events, double bare, double verified, double store, double bareWork, double verifiedWork, long held) {
        double ratio() {
            return verified / bare;
        }

        private String line() {
            return String.format(Locale.ROOT, "links: %9d events, bare %8.0f/s, verified %8.0f/s (ratio %.2f; %.0f %% of the time SQLite's check of its file); "
                    + "processor s: bare %6.2f, verified %6.2f; memory %3d MiB%n", events, bare, verified, ratio(),
                    100 * store * verified / events, bareWork, verifiedWork, held);
        }
    }

    /**
     * Figures.
     *
     * @param links  ledgers of growing size
     * @param signed signatures of events verified a second, each with the checkpoint after it, in a ledger of nothing else
     * @param insert bare durable inserts of the same bytes a second, one a transaction
     * @param append events appended a second, one a transaction
     */
    record Figures(List<Links> links, double signed, double insert, double append) {
        String table() {
            StringBuilder table = new StringBuilder();
            links.forEach(each -> table.append(each.line()));
            if (links.size() > 1) {
                table.append(String.format(Locale.ROOT, "growth: from %d to %d events the processor time grows with the power %.2f of their number%n",
                        before().events(), largest().events(), power()));
            }
            return table + String.format(Locale.ROOT, "signatures: %.0f signed events with their checkpoints/s%n"
                    + "append: bare insert %.0f/s, append %.0f/s (%.2f times as long)", signed, insert, append, insert / append);
        }

        private Links largest() {
            return links.get(links.size() - 1);
        }

        private Links before() {
            return links.get(links.size() - 2);
        }

        private double power() {
            double longer = largest().verifiedWork() / before().verifiedWork();
            return Math.log(longer) / Math.log((double) largest().events() / before().events());
        }

        /** The goals that were missed, in words. */
        String missed() {
            List<String> missed = new ArrayList<>();
            if (largest().ratio() < LEAST_RATIO) {
                missed.add(String.format(Locale.ROOT, "links at %.2f of the bare speed, goal %.1f", largest().ratio(), LEAST_RATIO));
            }
            if (insert / append > MOST_APPEND) {
                missed.add(String.format(Locale.ROOT, "append took %.2f times as long, goal %.1f", insert / append, MOST_APPEND));
            }
            if (largest().held() > links.get(0).held() + FLAT_MIB) {
                missed.add(String.format(Locale.ROOT, "memory %d MiB, %d with the smallest ledger", largest().held(), links.get(0).held()));
            }
            if (links.size() > 1 && power() > LINEAR) {
                missed.add(String.format(Locale.ROOT, "processor time grows with the power %.2f of the number of events", power()));
            }
            return String.join("; ", missed);
        }
    }

    /** @param sizes numbers of events, the smallest first */
    LedgerSpeed(Path folder, List<Integer> sizes) {
        this.folder = folder;
        this.sizes = List.copyOf(sizes);
    }

    Figures measure() throws Exception {
        List<Links> links = new ArrayList<>();
        Path ledger = folder;
        for (int events : sizes) {
            ledger = build(events);
            links.add(links(ledger, events));
        }
        int most = sizes.get(sizes.size() - 1);
        double signed = signed(most);
        Writing writing = written(ledger, Math.max(2, Math.min(100, most / 250)));
        return new Figures(links, signed, writing.insert(), writing.append());
    }

    private static Links links(Path ledger, int events) throws Exception {
        bare(ledger);
        double worked = work();
        double bare = events / bare(ledger);
        double bareWork = work() - worked;
        verified(ledger, Progress.none());
        worked = work();
        double verified = events / verified(ledger, Progress.none());
        double verifiedWork = work() - worked;
        double store = store(ledger);
        Held held = new Held(Math.max(1, events / LOOKS));
        verified(ledger, held);
        return new Links(events, bare, verified, store, bareWork, verifiedWork, held.most >> 20);
    }

    /** Looks now and then how much memory is in use, garbage aside. */
    private static final class Held implements Progress {
        private final long every;
        private long since;
        private long most;

        Held(long every) {
            this.every = every;
        }

        @Override
        public void begin(String what, long total) {
            look();
        }

        @Override
        public void advance(long steps) {
            since += steps;
            if (since >= every) {
                since = 0;
                look();
            }
        }

        @Override
        public void end() {
            look();
        }

        private void look() {
            System.gc();
            Runtime runtime = Runtime.getRuntime();
            most = Math.max(most, runtime.totalMemory() - runtime.freeMemory());
        }
    }

    /** Seconds of processor time that this process has taken; 0 where the system does not tell. */
    private static double work() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toNanos() / 1e9;
    }

    private Path build(int events) throws Exception {
        Path home = Files.createDirectory(folder.resolve("events" + events));
        Path file = home.resolve("bench.ledger");
        BenchKey key = BenchKeyStore.openOrCreate(home);
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
    private double signed(int events) throws Exception {
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
        verified(file, Progress.none());
        return seals / verified(file, Progress.none());
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

    private static double store(Path ledger) throws Exception {
        long begin = System.nanoTime();
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + ledger);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA integrity_check")) {
            if (!rows.next() || !rows.getString(1).equals("ok")) {
                throw new IllegalStateException("a sound file is found damaged");
            }
        }
        return seconds(begin);
    }

    private static double verified(Path ledger, Progress progress) throws Exception {
        long begin = System.nanoTime();
        Verification found = LedgerVerifier.verify(VerificationRequest.of(ledger).with(progress, Cancellation.never()));
        if (!found.clean()) {
            throw new IllegalStateException("a sound ledger is found unsound: " + found.faults());
        }
        return seconds(begin);
    }

    /** Rates of the two ways to write, in events a second. */
    private record Writing(double insert, double append) {
    }

    /** Some are appended, some inserted, and again, so that whatever else the machine does slows both down alike. */
    private Writing written(Path source, int rounds) throws Exception {
        List<byte[]> rows = rows(source, rounds * WRITES);
        Path home = Files.createDirectory(folder.resolve("append"));
        try (Ledger ledger = SqliteLedger.open(home.resolve("bench.ledger"));
                Connection bare = new SQLiteConfig().createConnection("jdbc:sqlite:" + home.resolve("bare.db"));
                Statement statement = bare.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("CREATE TABLE bare (position INTEGER PRIMARY KEY, link BLOB, subtree BLOB, canonical BLOB)");
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(home));
            TestId id = sample.newTest();
            double appending = 0;
            double inserting = 0;
            for (int round = 0; round < rounds; round++) {
                int from = round * WRITES;
                appending += append(ledger, sample, id, from);
                inserting += insert(bare, rows, from);
            }
            return new Writing(rounds * WRITES / inserting, rounds * WRITES / appending);
        }
    }

    private static double append(Ledger ledger, SampleLedger sample, TestId id, int from) throws Exception {
        long begin = System.nanoTime();
        for (int i = from; i < from + WRITES; i++) {
            ledger.append(id, i, List.of(sample.observation(id, i)));
        }
        return seconds(begin);
    }

    private static List<byte[]> rows(Path ledger, int count) throws Exception {
        List<byte[]> rows = new ArrayList<>();
        try (Tamper reader = Tamper.with(ledger)) {
            for (int i = 1; i <= count; i++) {
                rows.add(reader.bytes("SELECT canonical FROM event WHERE position = " + i));
            }
        }
        return rows;
    }

    private static double insert(Connection bare, List<byte[]> rows, int from) throws Exception {
        long begin = System.nanoTime();
        try (PreparedStatement insert = bare.prepareStatement("INSERT INTO bare VALUES (?, zeroblob(32), zeroblob(32), ?)")) {
            for (int i = from; i < from + WRITES; i++) {
                insert.setLong(1, i + 1);
                insert.setBytes(2, rows.get(i));
                insert.executeUpdate();
            }
        }
        return seconds(begin);
    }
}
