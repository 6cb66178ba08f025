package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** How wide the columns of a table are on a page. */
public final class ColumnWidths {

    private ColumnWidths() {
    }

    /**
     * As wide as their cells where there is room; else each at least as wide as its longest word, and the rest in proportion to what it lacks.
     *
     * @param wanted    what each column would need to break no cell
     * @param least     what each needs for its longest word, at most as much as is wanted
     * @param available what there is for all
     * @return a width for each column, at most {@code available} together; empty if there is no room for the longest words
     */
    public static Optional<List<Integer>> of(List<Integer> wanted, List<Integer> least, int available) {
        int all = sum(wanted);
        int needed = sum(least);
        if (all <= available) {
            return Optional.of(List.copyOf(wanted));
        }
        if (needed > available) {
            return Optional.empty();
        }
        List<Integer> widths = new ArrayList<>();
        for (int i = 0; i < wanted.size(); i++) {
            long lacks = wanted.get(i) - least.get(i);
            widths.add(least.get(i) + (int) (lacks * (available - needed) / (all - needed)));
        }
        return Optional.of(widths);
    }

    private static int sum(List<Integer> widths) {
        return widths.stream().mapToInt(Integer::intValue).sum();
    }
}
