package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.LedgerReport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The process is killed at 20 random moments while it carries rehearsals out. Each time the ledger verifies, and the same command goes on:
 * nothing that it had acknowledged is missing, and the interruption is on record. {@code releng/campaign --kills} does it as often as it is told.
 */
class KillTest {

    private static final int KILLS = Integer.getInteger("benchwright.kills", 20);
    private static final long SEED = Long.getLong("benchwright.kills.seed", 4711);
    /** Acknowledged events, and so places to kill at, in about one rehearsal that is not interrupted. */
    private static final int LINES_AHEAD = 12;
    /** At times the kill comes as long after a line as the next append takes, at times at once. */
    private static final int MOST_MILLIS_LATER = 25;
    private static final Pattern ACKNOWLEDGED = Pattern.compile("\\[(\\d+)\\] .*");
    private static final Pattern NAMED = Pattern.compile("Test (T-\\S+) is (opened|taken up again)\\.");

    @TempDir
    private Path folder;
    private final Random random = new Random(SEED);
    private final List<String> acknowledged = new ArrayList<>();
    private Optional<String> test = Optional.empty();
    private int interruptions;

    /** How one run of the process ended. */
    private record Run(boolean killed, int status, String errors) {
    }

    @Test
    void nothingAcknowledgedIsEverMissing() throws Exception {
        new CommandRunner(folder);
        Files.writeString(folder.resolve("good.answers"), SampleProcedure.GOOD);
        int kills = 0;
        int ended = 0;
        while (kills < KILLS) {
            Run run = runAndKill();
            boolean sealed = nothingIsMissing();
            if (run.killed()) {
                kills++;
                verifies();
            } else {
                assertTrue(run.status() == 0 || run.status() == 4, run.status() + ": " + run.errors());
                assertTrue(sealed, "it ended by itself, but is not sealed");
            }
            if (sealed) {
                forget();
                ended++;
            }
        }
        if (test.isPresent()) {
            runToTheEnd();
            ended++;
        }
        assertTrue(ended > 0);
        CommandRunner.Ended verified = new CommandRunner(folder).run("verify", ledger().toString());
        assertEquals(0, verified.status(), verified.out());
        assertTrue(verified.said().contains("Decisions: " + ended + " of " + ended + (ended == 1 ? " test" : " tests") + " derived again, no fault"), verified.out());
        String report = System.getProperty("benchwright.kills.report", "");
        if (!report.isEmpty()) {
            Files.writeString(Path.of(report), "seed %d: killed %d times in %d tests that were taken up again and ended: nothing acknowledged is missing, every interruption is on record, the ledger verifies after each%n"
                    .formatted(SEED, kills, ended));
        }
    }

    /** A kill may have come before there was a ledger. */
    private void verifies() throws Exception {
        if (Files.exists(ledger())) {
            LedgerReport report = BenchLedger.verify(ledger());
            assertTrue(report.sound(), report.toString());
        }
    }

    private Path ledger() {
        return folder.resolve("ledger").resolve("bench.ledger");
    }

    private void forget() {
        test = Optional.empty();
        acknowledged.clear();
        interruptions = 0;
    }

    private Process start() throws IOException {
        return new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-Xshare:auto", "-cp", ClassPath.text(), PlainBench.class.getName(), "test", "c16.procedure", "--serial", "C16-004711",
                "--answers", "good.answers", "--ledger", ledger().toString(), "--rehearse").directory(folder.toFile())
                .redirectError(folder.resolve("errors.txt").toFile()).start();
    }

    private Run runAndKill() throws IOException, InterruptedException {
        Process process = start();
        int left = random.nextInt(LINES_AHEAD);
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                if (heard(line) && left-- == 0) {
                    Thread.sleep(random.nextInt(MOST_MILLIS_LATER));
                    process.toHandle().destroyForcibly(); // the process itself would close our end of its output, too
                }
            }
        }
        int status = process.waitFor();
        // 128 + 9 where the system kills by a signal, 1 where it has none.
        boolean killed = left < 0 && (status == 137 || status == 1);
        return new Run(killed, status, Files.readString(folder.resolve("errors.txt")));
    }

    /** Takes down what the process has acknowledged, to the last line that it got out before it was killed. */
    private boolean heard(String line) {
        Matcher named = NAMED.matcher(line);
        if (named.matches()) {
            assertTrue(test.isEmpty() || test.get().equals(named.group(1)), "it goes on with the same test");
            interruptions += named.group(2).equals("opened") ? 0 : 1;
            test = Optional.of(named.group(1));
            return true;
        }
        if (ACKNOWLEDGED.matcher(line).matches()) {
            acknowledged.add(line);
            return true;
        }
        return false;
    }

    private void runToTheEnd() throws Exception {
        Process process = start();
        try (BufferedReader out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            out.lines().forEach(this::heard);
        }
        int status = process.waitFor();
        assertTrue(status == 0 || status == 4, status + ": " + Files.readString(folder.resolve("errors.txt")));
        assertTrue(nothingIsMissing(), "it ended, but is not sealed");
    }

    /** Looks at what the ledger holds of the test; true if it is sealed. */
    private boolean nothingIsMissing() throws Exception {
        if (test.isEmpty()) {
            return false; // It was killed before it had opened a test, or before it had said so.
        }
        try (BenchLedger ledger = BenchLedger.openReadOnly(ledger())) {
            KeptTest kept = ledger.test(test.get()).orElseThrow(() -> new AssertionError("the test is missing"));
            List<TestEvent> events = kept.run().events();
            for (String line : acknowledged) {
                Matcher parts = ACKNOWLEDGED.matcher(line);
                assertTrue(parts.matches());
                int sequence = Integer.parseInt(parts.group(1));
                assertTrue(sequence <= events.size(), "missing: " + line);
                assertTrue(events.get(sequence - 1).body() instanceof Fact, line + " is " + events.get(sequence - 1));
            }
            long recorded = events.stream().filter(event -> event.body() instanceof Fact.Interrupted).count();
            assertTrue(recorded >= interruptions, recorded + " interruptions on record, " + interruptions + " acknowledged");
            return kept.sealed();
        }
    }
}
