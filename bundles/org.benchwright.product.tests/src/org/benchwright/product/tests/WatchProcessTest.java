package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The finished watch as a process of its own, looking at a Modbus server by libmodbus; it is killed and ended in order. */
class WatchProcessTest {

    private static final int PATIENCE_SECONDS = 240;
    private static final Path PEER_SOURCE = Path.of("..", "org.benchwright.watch.tests", "peers", "modbus-peer.c").toAbsolutePath().normalize();

    private static final String FAMILY = """
            family wren "Wren" {
                lamp ok marked "OK" green "Health"
                modes stopped, run
                mode run shows ok green steady
                keeps fault_log "Fault log" by memory
                watched by modbus {
                    mode run when input 3 is on
                    condition supply from input register 30 signed 16, scale 0.1 V
                }
                stop restarts by itself
            }
            """;
    private static final String PROCEDURE = """
            procedure wren_soak "Wren on soak" revision 1 {
                applies to wren
                hazard mains danger "Terminals are live." can "kill" so "Fit the cover."
                otherwise conclude undecided "Not carried out."
                stage power_up "On" with hazard mains { step on "Switch on." { energises supply } }
                soak endurance "Endurance" lasting 72 h witnessed {
                    keep mode run
                    conditions supply 23.5 .. 24.5 V
                    watch every 1 s, stop after 2 bad, silent after 3 missed
                    look every 24 h, tolerance 2 h, unless watched
                    gap at most 2 h, or conclude undecided "Too long unseen."
                    when stopped go to read_log
                }
                stage read_log "Fault log" on demand { step log "Log." { enter fault_log conclude rejected "Stopped." } }
                make safe "Make safe" { step off "Off." { isolates supply } }
                conclude accepted
            }
            """;

    @TempDir
    private Path folder;
    private Path ledger;
    private Process peer;
    private Writer unit;
    private BufferedReader answers;
    private int started;

    @BeforeEach
    void putAUnitOnSoak() throws Exception {
        Path program = folder.resolve("modbus-peer");
        Process making = new ProcessBuilder("gcc", "-O1", "-I/usr/include/modbus", "-o", program.toString(), PEER_SOURCE.toString(), "-lmodbus")
                .inheritIO().start();
        assertTrue(making.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS));
        assertEquals(0, making.exitValue());
        peer = new ProcessBuilder(program.toString(), "0").start();
        unit = peer.outputWriter();
        answers = peer.inputReader();
        int port = Integer.parseInt(answers.readLine());
        set("input 3 1");
        set("ireg 30 240");
        Files.writeString(folder.resolve("wren.family"), FAMILY);
        Path procedure = Files.writeString(folder.resolve("wren.procedure"), PROCEDURE);
        Path given = Files.writeString(folder.resolve("up-to-the-soak.answers"),
                "hazard.* = understood\non.supply.on = done\nendurance.begin = yes; 24.0 V\n");
        ledger = folder.resolve("bench").resolve("bench.ledger");
        Product.Ended left = new Product(folder).run("test", procedure.toString(), "--serial", "W-1", "--ledger", ledger.toString(), "--rehearse",
                "--answers", given.toString());
        assertTrue(left.err().contains("endurance.look"), left.err());
        Files.writeString(ledger.resolveSibling("watch.units"), "# the only one\nW-1 = modbus 127.0.0.1:" + port + "\n");
    }

    @AfterEach
    void endPeer() {
        peer.destroyForcibly();
    }

    private void set(String line) throws IOException {
        unit.write(line + "\n");
        unit.flush();
        assertEquals("ok", answers.readLine());
    }

    private Process watch() throws IOException {
        started++;
        return new ProcessBuilder(new Product(folder).command("watch", "--ledger", ledger.toString())).directory(folder.toFile())
                .redirectErrorStream(true).redirectOutput(output().toFile()).start();
    }

    private Path output() {
        return folder.resolve("watch-" + started);
    }

    private String await(String text) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        String printed = "";
        while (!printed.contains(text)) {
            assertTrue(System.nanoTime() < end, "\"" + text + "\" is not in:\n" + printed);
            Thread.sleep(100);
            printed = Files.readString(output());
        }
        return printed;
    }

    private String told(String... command) throws Exception {
        return new Product(folder).run(command).out().replaceAll("\\s+", " ");
    }

    @Test
    void killedAndStartedAgainItStillSeesWhenTheUnitStops() throws Exception {
        Process first = watch();
        String printed = await("W-1  sees:");
        assertTrue(printed.startsWith("CAUTION: a network connection can disturb a unit under test"), printed);
        first.destroyForcibly().waitFor();

        Process second = watch();
        await("W-1  sees:");
        Thread.sleep(3000);
        set("ireg 30 220");
        await("supply left its limits: 22.0 V");
        Thread.sleep(2500);
        set("input 3 0");
        String stopped = await("W-1  stopped: not in mode run: the watch saw it stop between");
        assertTrue(stopped.contains("supply had left its limits before"), stopped);
        second.destroy();
        assertTrue(second.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS));
        await("The watch ends");

        assertTrue(told("units", "--ledger", ledger.toString()).contains("STOPPED, nobody has come yet"));
        assertTrue(told("verify", ledger.toString()).endsWith("The ledger is sound. "));
    }

    @Test
    void endedInOrderItLosesNothingOfWhatItSaw() throws Exception {
        long begun = System.nanoTime();
        Process watch = watch();
        await("W-1  sees:");
        Thread.sleep(7000);
        watch.destroy();
        assertTrue(watch.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS));
        await("The watch ends");
        Duration most = Duration.ofNanos(System.nanoTime() - begun);
        String units = told("units", "--ledger", ledger.toString());
        assertTrue(units.contains("CANNOT SEE: the watch was ended"), units);
        Matcher left = Pattern.compile(" 71 h (\\d+) min (?:(\\d+)(?:\\.\\d+)? s )?left").matcher(units);
        assertTrue(left.find(), units);
        Duration seen = Duration.ofHours(1).minusMinutes(Long.parseLong(left.group(1)))
                .minusSeconds(left.group(2) == null ? 0 : Long.parseLong(left.group(2)));
        assertTrue(seen.compareTo(Duration.ofSeconds(4)) >= 0 && seen.compareTo(most) <= 0, seen + " of " + most + ": " + units);
        assertTrue(told("verify", ledger.toString()).endsWith("The ledger is sound. "));
    }
}
