package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/**
 * Forwarding while either end is killed, and while the network between them is cut: at the end the shared ledger verifies clean and holds every
 * event once, in order. {@code releng/campaign --forwarding} asks for more kills by {@code benchwright.kills} and {@code .seed}.
 */
class ForwardingTroubleTest extends OnOneServer {

    private static final int KILLS = Integer.getInteger("benchwright.kills", 20);
    private static final long SEED = Long.getLong("benchwright.kills.seed", 7);

    private final Random random = new Random(SEED);

    @Test
    void aForwarderThatIsKilledAgainAndAgainRepeatsAndLosesNothing() throws Exception {
        int kills = 0;
        while (kills < KILLS) {
            // Something to forward each time; a kill that comes after the end is none.
            benches.muchWork("one", 4, 150);
            Process forwarder = forwarder("one", benches.url(), 0);
            if (killed(forwarder, 1 + random.nextInt(3))) {
                kills++;
            }
        }
        finish("one", benches.url());
        benches.assertWhole(List.of("one"));
        String file = System.getProperty("benchwright.kills.report", "");
        if (!file.isEmpty()) {
            Files.writeString(Path.of(file), kills + " forwarders killed, seed " + SEED + ": every event once, in order, verified\n");
        }
    }

    /** Kills when so many places were reached, a random moment later; false when it was done before. */
    private boolean killed(Process forwarder, int places) throws Exception {
        try (BufferedReader output = forwarder.inputReader()) {
            String line = output.readLine();
            for (int i = 0; i < places && line != null && !line.equals("done"); i++) {
                line = output.readLine();
            }
            Thread.sleep(random.nextInt(20));
            boolean alive = forwarder.isAlive();
            forwarder.toHandle().destroyForcibly();
            String last = output.lines().reduce(String.valueOf(line), (before, after) -> after);
            assertTrue(forwarder.waitFor(5, TimeUnit.MINUTES));
            return alive && !last.equals("done");
        }
    }

    @Test
    void aServerThatIsKilledInTheMiddleLosesNothingThatItAcknowledged() throws Exception {
        benches.muchWork("one", 20, 200);
        Process forwarder = forwarder("one", benches.url(), 100);
        try (BufferedReader output = forwarder.inputReader()) {
            for (int round = 0; round < 3; round++) {
                output.readLine();
                server.kill();
                Thread.sleep(random.nextInt(300));
                server.startAgain();
            }
            assertDone(forwarder, output);
        }
        benches.assertWhole(List.of("one"));
    }

    @Test
    void aNetworkThatIsCutOrFallsSilentOnlyDelays() throws Exception {
        benches.muchWork("one", 20, 200);
        try (CuttingProxy network = new CuttingProxy(server.port())) {
            String url = benches.url().replace(":" + server.port() + "/", ":" + network.port() + "/");
            Process forwarder = forwarder("one", url, 100);
            try (BufferedReader output = forwarder.inputReader()) {
                for (int round = 0; round < 12; round++) {
                    output.readLine();
                    Thread.sleep(random.nextInt(30));
                    network.cut();
                }
                network.silence(true);
                // Longer than the process is patient.
                Thread.sleep(2500);
                network.silence(false);
                assertDone(forwarder, output);
            }
        }
        benches.assertWhole(List.of("one"));
    }

    @Test
    void eightBenchesWriteAndForwardAtOnce() throws Exception {
        List<String> names = List.of("a", "b", "c", "d", "e", "f", "g", "h");
        List<Process> processes = new ArrayList<>();
        for (String name : names) {
            benches.work(name, 2, 10);
            processes.add(forwarder(name, benches.url(), 60));
        }
        for (Process process : processes) {
            try (BufferedReader output = process.inputReader()) {
                assertDone(process, output);
            }
        }
        benches.assertWhole(names);
        assertEquals(8, benches.verified().signers().size());
    }

    private Process forwarder(String bench, String url, int events) throws Exception {
        return ChildJvm.start(ForwardingProcess.class, benches.file(bench).toString(), url, String.valueOf(events));
    }

    private void finish(String bench, String url) throws Exception {
        Process process = forwarder(bench, url, 0);
        try (BufferedReader output = process.inputReader()) {
            assertDone(process, output);
        }
    }

    private static void assertDone(Process process, BufferedReader output) throws Exception {
        assertEquals("done", output.lines().reduce("", (before, after) -> after));
        assertTrue(process.waitFor(5, TimeUnit.MINUTES));
        assertEquals(0, process.exitValue());
    }
}
