package org.benchwright.language.speed.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

import org.junit.jupiter.api.Test;

/**
 * The measurement itself, on a small library that it must find without mistakes. How fast is for {@code releng/measure-language}, which asks
 * for larger ones by {@code benchwright.speed.files} and {@code .report}: a machine that does other things meanwhile must not fail a build.
 */
class MeasurementTest {

    @Test
    void aTableIsMade() throws Exception {
        String report = System.getProperty("benchwright.speed.report", "");
        List<Integer> files = Arrays.stream(System.getProperty("benchwright.speed.files", "2").split(",")).map(Integer::valueOf).toList();
        Measurement measurement = report.isEmpty() ? new Measurement(files, 20, 1, 30, 0) : new Measurement(files, 2000, 7, 300, 1);
        List<String> table = measurement.table();
        assertEquals(3 + 2 * files.size() + 3, table.size(), table::toString);
        assertTrue(table.get(table.size() - 1).startsWith("result: "), table::toString);
        assertTrue(table.subList(3, table.size() - 1).stream().allMatch(line -> line.matches(".* ms +[0-9.]+ ms.*")), table::toString);
        if (!report.isEmpty()) {
            Files.write(Path.of(report), table);
        }
    }
}
