package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

import org.benchwright.workshop.BenchLedger;
import org.junit.jupiter.api.Test;

/** A process that was started without any standard input, as some services are: what it reads in its place was typed by nobody. */
class ClosedInputTest extends OnABench {

    @Test
    void nothingIsReceivedThatNobodyScanned() throws Exception {
        assumeTrue(Files.exists(Path.of("/proc/self/fd")), "closed input is told by this");
        BenchLedger.open(bench.ledger()).close();
        Path out = folder.resolve("out");
        Process process = new ProcessBuilder("sh", "-c", "exec \"$@\" <&-", "sh", Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1", "-Xshare:auto", "-cp", ClassPath.text(), PlainBench.class.getName(), "receive", "--ledger", bench.ledger().toString())
                .redirectOutput(out.toFile()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        assertTrue(process.waitFor(240, TimeUnit.SECONDS));
        assertEquals("No unit is in the house that was received here.", bench("", "received").done().lastLine());
        assertEquals(0, process.exitValue());
    }
}
