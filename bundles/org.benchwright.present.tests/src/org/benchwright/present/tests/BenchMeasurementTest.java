package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.TestId;
import org.benchwright.present.Bench;
import org.benchwright.present.TestDialogue;
import org.benchwright.workshop.tests.BareStore;
import org.benchwright.workshop.tests.FullLedger;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePhoto;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long a technician waits at a bench whose ledger is full: from the answer, by way of the disk, to the next card; for a test to open; and
 * for the list of the units on the bench. Each answer is followed by a bare durable insert of the very bytes that it left in the ledger. In a
 * build with few tests, to see that the measurement works; releng/measure-bench asks for more.
 */
class BenchMeasurementTest {

    /** From confirmed to durable to the next step, at the median, where it is measured. */
    private static final double MOST_MILLIS = 50;
    /** Processor time to open a test or to list the units, at the median. */
    private static final double MOST_PROCESSOR_MILLIS = 200;
    private static final int WARM_UP = 3;
    private static final int UNITS = 20;

    @TempDir
    private Path folder;
    private final Times answers = new Times();
    private final Times bare = new Times();
    private final Times openings = new Times();
    private final Times lists = new Times();
    private BareStore store;
    private Ledger raw;

    /** What something took, in ms: by the clock, and of the processor in this thread. */
    private static final class Times {
        private final List<Double> clock = new ArrayList<>();
        private final List<Double> processor = new ArrayList<>();
        private long began;
        private long beganProcessor;

        void begin() {
            began = System.nanoTime();
            beganProcessor = processor();
        }

        void end(boolean counts) {
            double took = (System.nanoTime() - began) / 1e6;
            if (counts) {
                clock.add(took);
                processor.add((processor() - beganProcessor) / 1e6);
            }
        }

        private static long processor() {
            return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        }

        String line(String what) {
            return String.format(Locale.ROOT, "%-34s %9.1f %9.1f %9.1f %9.1f %9d%n", what, at(clock, 0.5), at(clock, 0.95), at(clock, 1), at(processor, 0.5),
                    clock.size());
        }
    }

    @Test
    void fromTheAnswerToTheNextCard() throws Exception {
        int tests = Integer.getInteger("benchwright.bench.tests", 100);
        MovedTime time = new MovedTime();
        String kept = System.getProperty("benchwright.bench.keep", "");
        Path ledger = (kept.isEmpty() ? folder : Files.createDirectories(Path.of(kept))).resolve("bench.ledger");
        FullLedger.make(ledger, time, SamplePlan.acceptance(), SamplePlan.TEXT, tests);
        Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("plate"));
        try (Bench bench = Bench.open(ledger, new Bench.Clocks(time, time, time)); BareStore bareStore = new BareStore(ledger.resolveSibling("bare.sqlite"));
                Ledger read = SqliteLedger.openReadOnly(ledger)) {
            store = bareStore;
            raw = read;
            assertEquals(tests, bench.records().size());
            for (int unit = 0; unit < UNITS; unit++) {
                walk(bench, String.format(Locale.ROOT, "C16-9%05d", unit), unit >= WARM_UP);
            }
            assertEquals(UNITS, bench.units().size());
        }
        String report = System.getProperty("benchwright.bench.report", "");
        if (!report.isEmpty()) {
            Files.writeString(Path.of(report), table(tests) + result());
        }
    }

    private String result() {
        List<String> missed = new ArrayList<>();
        if (at(answers.clock, 0.5) >= MOST_MILLIS) {
            missed.add("an answer takes " + MOST_MILLIS + " ms or more at the median");
        }
        if (at(openings.processor, 0.5) >= MOST_PROCESSOR_MILLIS || at(lists.processor, 0.5) >= MOST_PROCESSOR_MILLIS) {
            missed.add("opening or listing takes " + MOST_PROCESSOR_MILLIS + " ms of the processor or more at the median");
        }
        return missed.isEmpty() ? "result: ok\n" : "result: missed, " + String.join(", ", missed) + "\n";
    }

    private String table(int tests) {
        return String.format(Locale.ROOT, "%d tests in the ledger, %d more opened; times in ms%n%-34s %9s %9s %9s %9s %9s%n", tests, UNITS, "", "median", "95 %",
                "most", "processor", "count") + answers.line("answer, durable, next card") + bare.line("its bytes inserted, durable, bare")
                + openings.line("a test opened") + lists.line("units on the bench listed")
                + String.format(Locale.ROOT, "an answer takes %.1f times as long as the bare insert at the median, %.1f times at 95 %%%n",
                        at(answers.clock, 0.5) / at(bare.clock, 0.5), at(answers.clock, 0.95) / at(bare.clock, 0.95));
    }

    /** To the meter and past it, as {@code DialogueTest} does. */
    private void walk(Bench bench, String serial, boolean counts) throws Exception {
        openings.begin();
        TestDialogue dialogue = bench.begin(SamplePlan.acceptance(), SamplePlan.TEXT, new Bench.Work(serial, "QN", "bench 2", "Benchwright 0.1.0", false));
        dialogue.card();
        openings.end(counts);
        TestId test = new TestId(dialogue.test());
        for (String answer : List.of("y, 4711", "22 degC", "plate.jpg", "none", "u", "", "M-17, 0.02 V, k 2, due 2027-03-01", "24.02", "")) {
            long before = raw.lastSequence(test);
            answers.begin();
            dialogue.answer(answer, folder);
            dialogue.card();
            dialogue.soFar();
            answers.end(counts);
            List<byte[]> left = raw.entries(test, before + 1).stream().map(LedgerEntry::canonical).toList();
            assertFalse(left.isEmpty(), "the answer is on record");
            bare.begin();
            store.keep(left);
            bare.end(counts);
        }
        lists.begin();
        bench.units();
        lists.end(counts);
    }

    private static double at(List<Double> times, double part) {
        double[] sorted = times.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        return sorted[(int) Math.min(sorted.length - 1, Math.round(part * (sorted.length - 1)))];
    }
}
