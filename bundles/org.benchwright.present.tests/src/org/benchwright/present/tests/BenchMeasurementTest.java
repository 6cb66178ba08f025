package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.benchwright.present.Bench;
import org.benchwright.present.TestDialogue;
import org.benchwright.workshop.tests.FullLedger;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long a technician waits at a bench whose ledger is full: from the answer, by way of the disk, to the next card; for a test to open; and
 * for the list of the units on the bench. In a build with few tests, to see that the measurement works; releng/measure-bench asks for more.
 */
class BenchMeasurementTest {

    /** From confirmed to durable to the next step, at the median. */
    private static final double MOST_MILLIS = 50;
    private static final int WARM_UP = 3;
    private static final int UNITS = 20;

    @TempDir
    private Path folder;
    private final List<Double> answers = new ArrayList<>();
    private final List<Double> openings = new ArrayList<>();
    private final List<Double> lists = new ArrayList<>();

    @Test
    void fromTheAnswerToTheNextCard() throws Exception {
        int tests = Integer.getInteger("benchwright.bench.tests", 100);
        MovedTime time = new MovedTime();
        Path ledger = folder.resolve("bench.ledger");
        FullLedger.make(ledger, time, SamplePlan.acceptance(), SamplePlan.TEXT, tests);
        Files.write(folder.resolve("plate.jpg"), new byte[] {1});
        try (Bench bench = Bench.open(ledger, new Bench.Clocks(time, time, time))) {
            assertEquals(tests, bench.records().size());
            for (int unit = 0; unit < UNITS; unit++) {
                walk(bench, String.format(Locale.ROOT, "C16-9%05d", unit), unit >= WARM_UP);
            }
        }
        String table = String.format(Locale.ROOT, "%d tests in the ledger, %d more opened; times in ms%n%-34s %9s %9s %9s %9s%n", tests, UNITS, "", "median", "95 %",
                "most", "count") + line("answer, durable, next card", answers) + line("a test opened", openings) + line("units on the bench listed", lists);
        String report = System.getProperty("benchwright.bench.report", "");
        if (!report.isEmpty()) {
            Files.writeString(Path.of(report), table);
        }
        assertTrue(at(answers, 0.5) < MOST_MILLIS, table);
    }

    /** To the meter and past it, as {@code DialogueTest} does. */
    private void walk(Bench bench, String serial, boolean counts) throws Exception {
        long begin = System.nanoTime();
        TestDialogue dialogue = bench.begin(SamplePlan.acceptance(), SamplePlan.TEXT, new Bench.Work(serial, "QN", "bench 2", "Benchwright 0.1.0", false));
        dialogue.card();
        note(openings, begin, counts);
        for (String answer : List.of("y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01", "24.02", "")) {
            begin = System.nanoTime();
            dialogue.answer(answer, folder);
            dialogue.card();
            dialogue.soFar();
            note(answers, begin, counts);
        }
        begin = System.nanoTime();
        bench.units();
        note(lists, begin, counts);
    }

    private static void note(List<Double> times, long begin, boolean counts) {
        if (counts) {
            times.add((System.nanoTime() - begin) / 1e6);
        }
    }

    private static String line(String what, List<Double> times) {
        return String.format(Locale.ROOT, "%-34s %9.1f %9.1f %9.1f %9d%n", what, at(times, 0.5), at(times, 0.95), at(times, 1), times.size());
    }

    private static double at(List<Double> times, double part) {
        double[] sorted = times.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        return sorted[(int) Math.min(sorted.length - 1, Math.round(part * (sorted.length - 1)))];
    }
}
