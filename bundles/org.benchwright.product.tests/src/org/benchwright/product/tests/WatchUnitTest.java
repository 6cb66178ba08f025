package org.benchwright.product.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The service's unit as the manual prints it, read by systemd itself. */
class WatchUnitTest {

    private static final Path MANUAL = Path.of("..", "..", "docs", "watch.md");
    private static final Path FRONT_DOOR = Path.of("..", "..", "releng", "bench").toAbsolutePath().normalize();
    private static final int PATIENCE_SECONDS = 240;

    @TempDir
    private Path folder;

    /** The unit, with the front door of this checkout in the place of an installed one. */
    private static String unit() throws IOException {
        String manual = Files.readString(MANUAL);
        int begin = manual.indexOf("[Unit]\n");
        String unit = manual.substring(begin, manual.indexOf("```", begin));
        assertTrue(unit.contains("ExecStart=/opt/benchwright/bench watch --ledger "), unit);
        return unit.replace("/opt/benchwright/bench", FRONT_DOOR.toString());
    }

    /** What systemd has against a unit; nothing where it has nothing. */
    private String said(String unit) throws Exception {
        Path file = Files.writeString(folder.resolve("benchwright-watch.service"), unit);
        Process verify = new ProcessBuilder("systemd-analyze", "verify", "--man=no", file.toString()).redirectErrorStream(true).start();
        String said = new String(verify.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(verify.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS));
        return said.lines().filter(line -> line.contains("benchwright-watch")).reduce("", (all, line) -> all + line + "\n");
    }

    @Test
    void systemdHasNothingAgainstIt() throws Exception {
        assertEquals("", said(unit()));
    }

    @Test
    void aSlipInItWouldBeSeen() throws Exception {
        assertNotEquals("", said(unit().replace("KillSignal=", "KillSignl=")));
        assertNotEquals("", said(unit().replace(FRONT_DOOR.toString(), "/no/such/bench")));
    }
}
