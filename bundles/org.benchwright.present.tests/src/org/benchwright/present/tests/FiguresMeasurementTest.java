package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

import org.benchwright.ledger.Projection;
import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.workshop.Fleet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long figures take against a plain scan of the same table. In a build with few tests, to see that the measurement works;
 * releng/measure-figures asks for more and keeps the table.
 */
class FiguresMeasurementTest {

    private static final int ROUNDS = 7;
    /** So many times as long as a scan, at most. */
    private static final double MOST = 3;

    @TempDir
    private Path folder;

    /** The middle of several rounds, in milliseconds. */
    private record Times(long tests, double scan, double figures, long megabytes) {

        String line() {
            return String.format(Locale.ROOT, "%9d  %9.1f  %9.1f  %6.2f  %8.3f  %5d", tests, scan, figures, figures / scan,
                    1000 * figures / tests, megabytes);
        }

        /** Below 1 where the time grows more slowly than the number of tests, 1 where it grows in step. */
        String growth(Times fewer) {
            double times = (double) tests / fewer.tests();
            return String.format(Locale.ROOT, "%d tests instead of %d: %.1f times as many take %.1f times as long (exponent %.2f)%n", tests,
                    fewer.tests(), times, figures / fewer.figures(), Math.log(figures / fewer.figures()) / Math.log(times));
        }
    }

    @Test
    void figuresAgainstAScan() throws Exception {
        String counts = System.getProperty("benchwright.figures.tests", "2000");
        StringBuilder table = new StringBuilder("    tests    scan ms figures ms   ratio  ms/1,000  MiB used\n");
        List<Times> measured = new ArrayList<>();
        for (String count : counts.split(",")) {
            Times times = measure(Integer.parseInt(count.strip()));
            assertTrue(times.scan() > 0 && times.figures() > 0);
            table.append(times.line()).append('\n');
            measured.add(times);
        }
        for (int i = 1; i < measured.size(); i++) {
            table.append(measured.get(i).growth(measured.get(i - 1)));
        }
        table.append(result(measured)).append('\n');
        String report = System.getProperty("benchwright.figures.report", "");
        if (!report.isEmpty()) {
            Files.writeString(Path.of(report), table);
        }
    }

    /** Over few tests a scan is nothing, and figures cost what their drawing does: the goal is for the largest number. */
    private static String result(List<Times> measured) {
        Times most = measured.get(measured.size() - 1);
        return most.figures() <= MOST * most.scan() ? "result: ok" : String.format(Locale.ROOT,
                "result: missed, figures over %d tests took %.2f times a scan, goal %.0f", most.tests(), most.figures() / most.scan(), MOST);
    }

    private Times measure(int tests) throws Exception {
        try (Projection projection = Projection.open(folder.resolve(tests + ".figures"))) {
            new InventedFleet(1, tests).fill(projection);
            Fleet fleet = Fleet.of(projection);
            double[] scans = new double[ROUNDS];
            double[] figures = new double[ROUNDS];
            for (int round = 0; round < ROUNDS; round++) {
                long begin = System.nanoTime();
                assertTrue(projection.scan() > 0);
                long middle = System.nanoTime();
                List<?> drawn = Figures.of(fleet, FigureFilter.all(ZoneOffset.UTC, InventedFleet.day(tests))).figures();
                figures[round] = (System.nanoTime() - middle) / 1e6;
                scans[round] = (middle - begin) / 1e6;
                assertTrue(drawn.size() > 5);
            }
            Runtime runtime = Runtime.getRuntime();
            return new Times(tests, middle(scans), middle(figures), (runtime.totalMemory() - runtime.freeMemory()) >> 20);
        }
    }

    private static double middle(double[] times) {
        Arrays.sort(times);
        return times[times.length / 2];
    }
}
