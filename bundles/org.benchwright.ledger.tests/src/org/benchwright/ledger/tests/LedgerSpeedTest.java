package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.benchwright.ledger.tests.LedgerSpeed.Figures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The measurement itself, on a small ledger that it must find sound; how fast is for {@code releng/speed}, which asks for larger ones by
 * {@code benchwright.speed.events} and {@code .report}: a machine that does other things meanwhile must not fail a build.
 */
class LedgerSpeedTest {

    @TempDir
    Path folder;

    @Test
    void everyFigureOfASoundLedgerIsMeasured() throws Exception {
        Figures figures = new LedgerSpeed(folder, Integer.getInteger("benchwright.speed.events", 1000)).measure();
        String file = System.getProperty("benchwright.speed.report", "");
        if (!file.isEmpty()) {
            Files.writeString(Path.of(file), figures.table() + "\n");
        }
        for (double rate : List.of(figures.bare(), figures.links(), figures.signed(), figures.insert(), figures.append())) {
            assertTrue(rate > 0 && Double.isFinite(rate), figures.table());
        }
    }
}
