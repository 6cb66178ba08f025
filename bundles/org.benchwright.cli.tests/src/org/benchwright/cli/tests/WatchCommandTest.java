package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

import org.benchwright.cli.BenchCommandLine;
import org.benchwright.cli.Surroundings;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.language.Reading;
import org.benchwright.present.Bench;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.tests.ChangedPlan;
import org.benchwright.workshop.tests.SamplePlan;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The watch at the terminal, over a rehearsal that has arrived at its soak; by the clocks that everybody's watch shows. */
class WatchCommandTest extends OnABench {

    private static final String CAUTION = "CAUTION: a network connection can disturb a unit under test";

    private Path heard;

    @BeforeEach
    void watchIt() {
        heard = folder.resolve("heard");
        bench.with((file, family) -> new Reading.Ready(plan(), SamplePlan.TEXT, List.of()));
    }

    /** The sample's soak, sampled every 100 ms. */
    private static Plan plan() {
        return ChangedPlan.of(SamplePlan.acceptance()).watched(new SoakStage.Watch(Duration.ofMillis(100), 2, 3)).plan();
    }

    private CommandRunner.Ended watch(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream() {
            @Override
            public synchronized void write(byte[] bytes, int from, int length) {
                super.write(bytes, from, length);
                try {
                    Files.write(heard, toByteArray());
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Surroundings around = new Surroundings(new ByteArrayInputStream(new byte[0]), out, err, false, Map.of(), folder, Optional.empty(),
                Bench.Clocks.system(), ZoneOffset.UTC, "0.1.0");
        int status = new BenchCommandLine(around, SampleProcedure.SOURCE).run(arguments);
        return new CommandRunner.Ended(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private void beginLedger() throws Exception {
        BenchLedger.open(bench.ledger()).close();
    }

    private void rehearseUpToTheSoak() throws Exception {
        CommandRunner.Ended ended = bench.rehearse(SampleProcedure.without("endurance.look"));
        assertTrue(ended.err().contains("endurance.look"), ended.err());
    }

    @Test
    void aStopIsToldAndTheOperatorIsCalledWithPlainArguments() throws Exception {
        rehearseUpToTheSoak();
        Path called = folder.resolve("called");
        Path command = Files.writeString(folder.resolve("call somebody now"), "#!/bin/sh\nprintf '%s|' \"$@\" >> '" + called + "'\n");
        Files.setPosixFilePermissions(command, PosixFilePermissions.fromString("rwx------"));
        CommandRunner.Ended ended = watch("watch", "--ledger", bench.ledger().toString(), "--unit", "C16-004711", "--at", "simulated stops after 1 s",
                "--for", "5", "--command", command.toString());
        assertEquals(0, ended.status(), ended.out() + ended.err());
        assertTrue(ended.said().startsWith(CAUTION), ended.out());
        assertTrue(ended.said().contains("1 unit is watched: C16-004711"), ended.out());
        assertTrue(ended.said().contains("C16-004711 stopped: not in mode run: the watch saw it stop between"), ended.out());
        String[] arguments = Files.readString(called).split("\\|");
        assertEquals("stopped", arguments[0]);
        assertEquals("C16-004711", arguments[1]);
        assertTrue(arguments[3].startsWith("not in mode run"), arguments[3]);
        assertTrue(units().contains("WATCH: STOPPED, nobody has come yet: not in mode run"), units());
        ledgerIsSound();
        String test = units().replaceAll(".*(T-[0-9A-Z]{5}-[0-9A-Z]{5}).*", "$1");
        assertEquals(0, bench.run("report", test, "--ledger", bench.ledger().toString(), "--soak", "soak.html").status());
        String page = Files.readString(folder.resolve("soak.html"));
        assertTrue(page.contains("<svg") && page.contains("not in mode run: the watch saw it stop between") && page.contains("ambient"), page);
    }

    @Test
    void unitsShowWhetherTheyAreWatched() throws Exception {
        rehearseUpToTheSoak();
        assertTrue(units().contains("watch: no watch yet (bench watch)"), units());
        watch("watch", "--ledger", bench.ledger().toString(), "--unit", "C16-004711", "--at", "simulated", "--for", "2");
        assertTrue(units().contains("WATCH: SIMULATED, no unit: CANNOT SEE: the watch was ended"), units());
    }

    private String units() {
        return bench.run("units", "--ledger", bench.ledger().toString()).said();
    }

    /** It would go on for longer than there are numbers for, until somebody ends it. */
    @Test
    void theLongestTimeIsNoTrouble() throws Exception {
        beginLedger();
        CompletableFuture<CommandRunner.Ended> ended = new CompletableFuture<>();
        Thread watching = new Thread(() -> ended.complete(watch("watch", "--ledger", bench.ledger().toString(), "--for", String.valueOf(Long.MAX_VALUE))));
        watching.start();
        while (!Files.exists(heard) || !Files.readString(heard).contains("No unit on soak")) {
            assertFalse(ended.isDone(), () -> ended.join().toString());
            Thread.sleep(10);
        }
        watching.interrupt();
        CommandRunner.Ended watched = ended.get();
        assertEquals(2, watched.status(), "it was to go on, and no test is left open: " + watched);
        assertTrue(watched.err().contains("was interrupted"), watched.err());
    }

    @Test
    void whatIsNotUnderstoodIsSaid() throws Exception {
        beginLedger();
        watch("watch", "--ledger", bench.ledger().toString(), "--unit", "C16-1").refused("Each --unit needs an --at");
        watch("watch", "--ledger", bench.ledger().toString(), "--for", "-1").refused("none below 0");
        CommandRunner.Ended ended = watch("watch", "--ledger", bench.ledger().toString(), "--unit", "C16-1", "--at", "telnet 192.0.2.7", "--for", "1");
        assertEquals(1, ended.status());
        ended.refused("\"telnet 192.0.2.7\" does not say where a unit is reached");
    }

    @Test
    void aCommandThatIsNotThereIsSaidAndTheWatchGoesOn() throws Exception {
        rehearseUpToTheSoak();
        CommandRunner.Ended ended = watch("watch", "--ledger", bench.ledger().toString(), "--unit", "C16-004711", "--at", "simulated stops after 1 s",
                "--for", "4", "--command", folder.resolve("nothing; reboot").toString());
        assertEquals(0, ended.status());
        assertTrue(ended.said().contains("can't be started"), ended.out());
    }
}
