package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.benchwright.ledger.tests.LedgerSpeed.Figures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The measurement itself, on a small ledger that it must find sound; how fast is for {@code releng/speed}, which asks for larger ones by
 * {@code benchwright.speed.events} (numbers with commas) and {@code .report}: a machine that does other things meanwhile must not fail a build.
 */
class LedgerSpeedTest {

    @TempDir
    Path folder;

    @Test
    void everyFigureOfASoundLedgerIsMeasured() throws Exception {
        List<Integer> sizes = Arrays.stream(System.getProperty("benchwright.speed.events", "500,1000").split(",")).map(Integer::valueOf).toList();
        Figures figures = new LedgerSpeed(folder, sizes).measure();
        String file = System.getProperty("benchwright.speed.report", "");
        if (!file.isEmpty()) {
            String missed = figures.missed();
            Files.writeString(Path.of(file), figures.table() + "\nresult: " + (missed.isEmpty() ? "ok" : "missed, " + missed) + "\n");
        }
        List<Double> rates = new ArrayList<>(List.of(figures.signed(), figures.insert(), figures.append()));
        figures.links().forEach(each -> rates.addAll(List.of(each.bare(), each.verified(), (double) each.held())));
        assertEquals(3 + 3 * sizes.size(), rates.size());
        for (double rate : rates) {
            assertTrue(rate > 0 && Double.isFinite(rate), figures.table());
        }
    }
}
