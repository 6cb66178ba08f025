package org.benchwright.language.speed.tests;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;
import org.openjdk.jmh.util.Statistics;

/**
 * Runs the benchmarks and puts what comes out in a table.
 *
 * @param files      how many procedures each library has
 * @param steps      how many steps the long procedure has
 * @param rounds     how many times a library is checked after as many times to warm up
 * @param keystrokes how many letters are typed after as many to warm up
 * @param forks      1 to measure in a Java machine of its own; 0 only to try whether all this works
 */
record Measurement(List<Integer> files, int steps, int rounds, int keystrokes, int forks) {

    /** The editor waits so long for more to be typed before it looks at a text; the language server doesn't. */
    private static final int PAUSE_MILLIS = 10;
    private static final double MOST_MILLIS = 100;
    /** So many times as long as parsing and linking, at most. */
    private static final double MOST_TIMES = 2;

    /** The table; its last line tells whether the goals were reached. */
    List<String> table() throws RunnerException {
        List<String> missed = new ArrayList<>();
        List<String> lines = new ArrayList<>(List.of(machine(), "",
                "What                                        median      90 %   to the baseline"));
        for (int count : files) {
            double link = add(lines, count + " files parsed and linked", run("CheckSpeed.link", "files", count, rounds), "");
            Statistics check = run("CheckSpeed.check", "files", count, rounds);
            if (check.getPercentile(50) > MOST_TIMES * link) {
                missed.add(String.format(Locale.ROOT, "a check of %d files took %.2f times as long, goal %.0f", count, check.getPercentile(50) / link,
                        MOST_TIMES));
            }
            add(lines, count + " files checked", check, String.format(Locale.ROOT, "%.2f times", check.getPercentile(50) / link));
        }
        Statistics typed = run("KeystrokeSpeed.keystroke", "steps", steps, keystrokes);
        add(lines, "a letter in " + steps + " steps", typed, "");
        double letter = typed.getPercentile(50) + PAUSE_MILLIS;
        if (letter >= MOST_MILLIS) {
            missed.add(String.format(Locale.ROOT, "a letter took %.0f ms, goal %.0f", letter, MOST_MILLIS));
        }
        lines.add(String.format(Locale.ROOT, "%-40s %7.1f ms %6.1f ms", "  the same with the editor's pause", typed.getPercentile(50) + PAUSE_MILLIS,
                typed.getPercentile(90) + PAUSE_MILLIS));
        lines.add(missed.isEmpty() ? "result: ok" : "result: missed, " + String.join("; ", missed));
        return lines;
    }

    private static double add(List<String> lines, String what, Statistics times, String ratio) {
        lines.add(String.format(Locale.ROOT, "%-40s %7.1f ms %6.1f ms   %s", what, times.getPercentile(50), times.getPercentile(90), ratio));
        return times.getPercentile(50);
    }

    private Statistics run(String benchmark, String parameter, int value, int iterations) throws RunnerException {
        ChainedOptionsBuilder options = new OptionsBuilder().include("\\." + benchmark.replace(".", "\\.") + "$")
                .param(parameter, Integer.toString(value))
                .warmupIterations(iterations).measurementIterations(iterations).forks(forks).verbosity(VerboseMode.SILENT).shouldFailOnError(true);
        RunResult result = new Runner(options.build()).runSingle();
        return result.getPrimaryResult().getStatistics();
    }

    private static String machine() {
        return String.format(Locale.ROOT, "%s, %d processors, Java %s, heap of %d MiB, load %.1f", System.getProperty("os.arch"),
                Runtime.getRuntime().availableProcessors(), System.getProperty("java.version"), Runtime.getRuntime().maxMemory() >> 20,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }
}
