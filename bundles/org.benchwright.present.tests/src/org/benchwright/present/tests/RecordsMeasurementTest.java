package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.benchwright.core.Cancellation;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Forwarder;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.SharedPlace;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.tests.PostgresServer;
import org.benchwright.present.Bench;
import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSearch;
import org.benchwright.workshop.tests.ManyRecords;
import org.benchwright.workshop.tests.MovedTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long a search of each kind over many records takes, and how long it takes to list them: from the bench's own ledger, and from a shared one by way
 * of the copy that is looked at. In a build with few tests, to see that the measurement works; releng/measure-records asks for more.
 */
class RecordsMeasurementTest {

    private static final double MOST_MILLIS = 100;
    /** As many as the window shows. */
    private static final int LINES = 500;
    private static final int WARM_UP = 10;
    private static final int ROUNDS = 50;

    @TempDir
    private Path folder;
    private final StringBuilder table = new StringBuilder();
    private final List<String> missed = new ArrayList<>();

    @Test
    void eachKindOfSearchFindsWhatItAsksFor() throws Exception {
        int tests = Integer.getInteger("benchwright.records.tests", 60);
        Path own = folder.resolve("bench.ledger");
        long begin = System.nanoTime();
        ManyRecords.make(own, new MovedTime(), tests);
        say("%d tests made in %.1f s", tests, seconds(begin));
        measure("SQLite", own, tests);
        measure("PostgreSQL", shared(own), tests);
        table.append(missed.isEmpty() ? "result: ok" : "result: missed, " + String.join("; ", missed)).append('\n');
        String report = System.getProperty("benchwright.records.report", "");
        if (!report.isEmpty()) {
            Files.writeString(Path.of(report), table);
        }
    }

    private void say(String form, Object... values) {
        table.append(String.format(Locale.ROOT, form, values)).append('\n');
    }

    /** The ledger that benches share, as somebody gets it who looks at its records. */
    private Path shared(Path own) throws Exception {
        try (PostgresServer server = PostgresServer.start()) {
            String url = server.url(server.newDatabase());
            PostgresLedger.install(new SharedPlace(url, PostgresServer.OWNER, PostgresServer.PASSWORD), PostgresServer.BENCH);
            long begin = System.nanoTime();
            SharedPlace place = new SharedPlace(url, PostgresServer.BENCH, PostgresServer.PASSWORD);
            try (SqliteLedger ledger = SqliteLedger.open(own); PostgresLedger shared = PostgresLedger.open(place)) {
                Forwarder forwarder = new Forwarder(ledger, shared, BenchKeyStore.openOrCreate(own.getParent()), Clock.systemUTC());
                forwarder.lendBooks();
                assertEquals(List.of(), forwarder.run(reached -> { }, Cancellation.never()).stops());
                say("forwarded to PostgreSQL in %.1f s", seconds(begin));
                Path copy = Files.createDirectory(folder.resolve("shared")).resolve("shared.ledger");
                begin = System.nanoTime();
                shared.copyTo(copy);
                say("fetched from PostgreSQL in %.1f s", seconds(begin));
                return copy;
            }
        }
    }

    private void measure(String store, Path ledger, int tests) throws Exception {
        RecordSearch search = listed(store, ledger, tests);
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        say("%s: %d MiB used with all rows; a search, in ms%n%-12s %9s %9s %9s", store, (runtime.totalMemory() - runtime.freeMemory()) >> 20, "", "median", "95 %",
                "found");
        List<RecordRow> rows = search.found("");
        kinds(rows.get(rows.size() / 2)).forEach((kind, words) -> kind(store, search, kind, words));
    }

    private RecordSearch listed(String store, Path ledger, int tests) throws Exception {
        long begin = System.nanoTime();
        try (Bench bench = Bench.read(ledger, Bench.Clocks.system())) {
            List<RecordRow> rows = new ArrayList<>();
            for (String test : bench.records()) {
                bench.row(test).ifPresent(rows::add);
            }
            RecordSearch search = RecordSearch.none().and(rows);
            double took = seconds(begin);
            say("%s: %d rows listed in %.1f s (%.0f/s)", store, search.size(), took, search.size() / took);
            assertEquals(tests, search.size());
            return search;
        }
    }

    /** What to look for, for each kind of word that a row is found by. */
    private static Map<String, String> kinds(RecordRow row) {
        Map<String, String> kinds = new LinkedHashMap<>();
        kinds.put("serial", row.serial());
        kinds.put("family", row.family());
        kinds.put("procedure", row.procedure());
        kinds.put("verdict", "undecided");
        kinds.put("departure", "connector bent");
        kinds.put("person", row.technician());
        kinds.put("instrument", "M-17");
        kinds.put("date", row.opened().atZone(ZoneId.systemDefault()).toLocalDate().toString());
        kinds.put("nothing", "no-such-unit");
        return kinds;
    }

    private void kind(String store, RecordSearch search, String kind, String words) {
        double[] millis = new double[ROUNDS];
        int found = 0;
        for (int round = -WARM_UP; round < ROUNDS; round++) {
            long begin = System.nanoTime();
            found = search.found(words, LINES).count();
            if (round >= 0) {
                millis[round] = seconds(begin) * 1000;
            }
        }
        Arrays.sort(millis);
        double most = millis[(int) Math.round(0.95 * (ROUNDS - 1))];
        say("%-12s %9.1f %9.1f %9d", kind, millis[ROUNDS / 2], most, found);
        assertEquals(kind.equals("nothing"), found == 0, kind + ": " + words);
        if (most >= MOST_MILLIS) {
            missed.add(String.format(Locale.ROOT, "%s on %s took %.0f ms, goal %.0f ms", kind, store, most, MOST_MILLIS));
        }
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }
}
