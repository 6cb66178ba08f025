package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.cli.BenchCommandLine;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Pause;
import org.benchwright.core.Ticker;
import org.benchwright.present.Bench;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.MovedTime;
import org.benchwright.workshop.tests.SamplePhoto;
import org.benchwright.workshop.tests.SamplePlan;

/** Runs commands in this process, with streams in memory and clocks moved by hand. */
final class CommandRunner {

    private final Path folder;
    private final MovedTime time = new MovedTime();
    private Pause pause = time;
    private ProcedureSource procedures = SampleProcedure.SOURCE;
    private boolean going;

    CommandRunner(Path folder) throws IOException {
        this.folder = folder;
        Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("plate"));
    }

    /** How a command ended, and what it printed. */
    record Ended(int status, String out, String err) {

        /** Standard output with its line breaks taken out. */
        String said() {
            return out.replaceAll("\\s+", " ");
        }

        /** The last line of standard output. */
        String lastLine() {
            String[] lines = out.strip().split("\\R");
            return lines[lines.length - 1];
        }

        /** The id of the test, with which the last line of one ends. */
        String test() {
            return lastLine().replaceAll("^.*\\| ", "");
        }

        /** It was done. */
        Ended done() {
            assertEquals(0, status, out + err);
            return this;
        }

        /** It was done, and these words were printed, wherever the lines broke. */
        Ended says(String words) {
            assertTrue(done().said().contains(words), out);
            return this;
        }

        /** It was refused with these words, wherever the lines broke. */
        void refused(String words) {
            assertEquals(1, status, out + err);
            assertTrue(err.replaceAll("\\s+", " ").contains(words), err);
            assertFalse(err.contains("at org."), err);
        }
    }

    MovedTime time() {
        return time;
    }

    Path folder() {
        return folder;
    }

    Path ledger() {
        return folder.resolve("ledger").resolve("bench.ledger");
    }

    /** The bench's clocks. */
    Bench.Clocks clocks() {
        return going ? clocksThatGo() : new Bench.Clocks(time, time, pause);
    }

    /** They begin where the moved ones stand. */
    private Bench.Clocks clocksThatGo() {
        Ticker real = Ticker.system();
        Duration ahead = time.elapsed().minus(real.elapsed());
        Clock wall = Clock.offset(Clock.systemUTC(), Duration.between(Instant.now(), time.instant()));
        return new Bench.Clocks(wall, () -> real.elapsed().plus(ahead), Pause.system());
    }

    /** Whether clocks go by themselves while a command runs, or only the test moves them. */
    CommandRunner timeGoesBy(boolean byItself) {
        going = byItself;
        return this;
    }

    /** Waiting moves no clock: only the test does. */
    CommandRunner standingStill() {
        pause = duration -> Thread.sleep(5);
        return this;
    }

    /** How waiting is done. */
    CommandRunner waitingBy(Pause waiting) {
        pause = waiting;
        return this;
    }

    /** In the ledger the sample procedure is approved, so that real tests can be opened by it. */
    CommandRunner approved() throws Exception {
        Approved.in(ledger(), time.benchTime(), SamplePlan.acceptance(), SamplePlan.TEXT);
        return this;
    }

    /** There are auditors too, who had no hand in any test: MJ and HD. */
    CommandRunner audited() throws Exception {
        try (BenchLedger open = BenchLedger.open(ledger())) {
            Approved.auditors(open, time.benchTime());
        }
        return this;
    }

    CommandRunner with(ProcedureSource other) {
        procedures = other;
        return this;
    }

    Ended run(String... arguments) {
        return typing("", arguments);
    }

    /** Runs a command while this text stands in standard input. */
    Ended typing(String typed, String... arguments) {
        return typing(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), arguments);
    }

    Ended typing(InputStream in, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = talking(in, out, err, arguments);
        return new Ended(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** Runs a command between streams; its status. */
    int talking(InputStream in, OutputStream out, OutputStream err, String... arguments) {
        Bench.Clocks clocks = clocks();
        Duration before = clocks.ticker().elapsed();
        Surroundings around = new Surroundings(in, out, err, false, Map.of("USER", "QN", "HOSTNAME", "bench2"), folder, Optional.empty(),
                clocks, ZoneOffset.UTC, "0.1.0");
        int status = new BenchCommandLine(around, procedures).run(arguments);
        if (going) {
            time.advance(clocks.ticker().elapsed().minus(before));
        }
        return status;
    }

    /** Runs a command on the bench's ledger. */
    Ended onLedger(String... words) {
        return typingOnLedger("", words);
    }

    /** Runs a command on the bench's ledger while this text stands in standard input. */
    Ended typingOnLedger(String typed, String... words) {
        return typing(typed, Stream.concat(Stream.of(words), Stream.of("--ledger", ledger().toString())).toArray(String[]::new));
    }

    /** Rehearses the procedure by these answers. */
    Ended rehearse(String answers) throws IOException {
        Path file = Files.writeString(folder.resolve("test.answers"), answers);
        return run("test", "c16.procedure", "--serial", "C16-004711", "--answers", file.toString(), "--ledger", ledger().toString(),
                "--rehearse");
    }

    /** Carries out a real test by lines that a person typed. */
    Ended carryOut(String typed) {
        return typing(typed, "test", "c16.procedure", "--serial", "C16-004711", "--ledger", ledger().toString());
    }
}
