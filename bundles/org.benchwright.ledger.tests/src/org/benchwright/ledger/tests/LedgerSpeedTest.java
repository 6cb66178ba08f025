package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.benchwright.ledger.tests.LedgerSpeed.Figures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The measurement itself on a small ledger, with a bound that only a gross slip misses; {@code releng/speed} asks for larger ones by
 * {@code benchwright.speed.events} and {@code .report}.
 */
class LedgerSpeedTest {

    @TempDir
    Path folder;

    @Test
    void verifyingAndAppendingStayWithinSightOfTheBareStore() throws Exception {
        Figures figures = new LedgerSpeed(folder, Integer.getInteger("benchwright.speed.events", 2000)).measure();
        String file = System.getProperty("benchwright.speed.report", "");
        if (!file.isEmpty()) {
            Files.writeString(Path.of(file), figures.table() + "\n");
        }
        assertTrue(figures.links() > figures.bare() / 200, figures.table());
        assertTrue(figures.append() > figures.insert() / 200, figures.table());
    }
}
