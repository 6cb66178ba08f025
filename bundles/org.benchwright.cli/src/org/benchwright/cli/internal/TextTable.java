package org.benchwright.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

import org.benchwright.core.SheetTable;

/** A table in a terminal: the columns beside each other, or cell behind cell, row by row, where they don't fit. */
final class TextTable {

    private static final int MOST_ROWS = 20;
    private static final int GAP = 2;

    private final SheetTable table;
    private final int width;

    TextTable(SheetTable table, int width) {
        this.table = table;
        this.width = width;
    }

    /** How many rows are not shown. */
    int leftOut() {
        return Math.max(0, table.rows().size() - MOST_ROWS);
    }

    /** The lines, indented. */
    List<String> lines() {
        return lines(table.rows().subList(0, Math.min(MOST_ROWS, table.rows().size())));
    }

    /** The lines of all rows, indented. */
    List<String> allLines() {
        return lines(table.rows());
    }

    private List<String> lines(List<List<String>> rows) {
        int[] widths = IntStream.range(0, table.headings().size())
                .map(column -> IntStream.concat(IntStream.of(table.headings().get(column).length()),
                        rows.stream().mapToInt(row -> row.get(column).length())).max().orElse(0))
                .toArray();
        if (IntStream.of(widths).sum() + GAP * (widths.length + 1) > width) {
            return oneUnderTheOther(rows);
        }
        List<String> lines = new ArrayList<>(List.of(line(table.headings(), widths)));
        rows.forEach(row -> lines.add(line(row, widths)));
        return lines;
    }

    private static String line(List<String> cells, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int column = 0; column < widths.length; column++) {
            line.append(" ".repeat(GAP)).append(cells.get(column)).append(" ".repeat(widths[column] - cells.get(column).length()));
        }
        return line.toString().stripTrailing();
    }

    private List<String> oneUnderTheOther(List<List<String>> rows) {
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder text = new StringBuilder(row.get(0));
            for (int column = 1; column < row.size(); column++) {
                if (!row.get(column).isEmpty()) {
                    text.append(column == 1 ? ": " : ", ").append(table.headings().get(column)).append(' ').append(row.get(column));
                }
            }
            lines.addAll(Wrap.lines(text.toString(), width, "  ", "    "));
        }
        return lines;
    }
}
