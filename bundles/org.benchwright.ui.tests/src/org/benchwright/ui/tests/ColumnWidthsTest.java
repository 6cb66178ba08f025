package org.benchwright.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.benchwright.ui.internal.help.ColumnWidths;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No column is narrower than its longest word, and no table wider than the page. */
class ColumnWidthsTest {

    @Test
    void whereThereIsRoomNoCellIsBroken() {
        assertEquals(Optional.of(List.of(100, 300)), ColumnWidths.of(List.of(100, 300), List.of(40, 60), 400));
    }

    @Test
    void whatIsLeftGoesWhereItIsLacking() {
        assertEquals(Optional.of(List.of(40, 160)), ColumnWidths.of(List.of(40, 900), List.of(40, 60), 200));
        assertEquals(Optional.of(List.of(75, 125)), ColumnWidths.of(List.of(100, 200), List.of(50, 50), 200));
    }

    @Test
    void withoutRoomForTheLongestWordsThereAreNoColumns() {
        assertEquals(Optional.empty(), ColumnWidths.of(List.of(100, 300), List.of(90, 120), 209));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whateverTheTable(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            List<Integer> least = new ArrayList<>();
            List<Integer> wanted = new ArrayList<>();
            for (int column = 0; column <= random.nextInt(6); column++) {
                least.add(1 + random.nextInt(200));
                wanted.add(least.get(column) + random.nextInt(2000));
            }
            int available = random.nextInt(3000);
            Optional<List<Integer>> widths = ColumnWidths.of(wanted, least, available);
            assertEquals(least.stream().mapToInt(Integer::intValue).sum() <= available, widths.isPresent());
            widths.ifPresent(set -> {
                assertTrue(set.stream().mapToInt(Integer::intValue).sum() <= available, () -> set + " in " + available);
                for (int column = 0; column < set.size(); column++) {
                    assertTrue(set.get(column) >= least.get(column) && set.get(column) <= wanted.get(column), () -> set + " for " + least + " to " + wanted);
                }
            });
        }
    }
}
