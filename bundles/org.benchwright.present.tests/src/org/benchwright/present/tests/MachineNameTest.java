package org.benchwright.present.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

import org.benchwright.present.MachineName;
import org.junit.jupiter.api.Test;

/** Two benches must not go by one name only because their shells keep it to themselves. */
class MachineNameTest {

    @Test
    void whatTheEnvironmentTellsCounts() {
        assertEquals("bench2", MachineName.of(Map.of("HOSTNAME", "bench2", "COMPUTERNAME", "OTHER")));
        assertEquals("BENCH3", MachineName.of(Map.of("COMPUTERNAME", "BENCH3")));
    }

    @Test
    void elseTheSystemIsAsked() throws Exception {
        assertFalse(MachineName.of(Map.of()).isBlank());
        assertEquals(MachineName.of(Map.of()), MachineName.of(Map.of("HOSTNAME", " ")));
        Path system = Path.of("/proc/sys/kernel/hostname");
        assumeTrue(Files.isReadable(system), "Linux tells it in a file");
        assertEquals(Files.readString(system).strip(), MachineName.of(Map.of()));
    }
}
