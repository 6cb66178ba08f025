package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

import org.benchwright.engine.Demand;
import org.benchwright.engine.plan.Action;
import org.benchwright.present.EntryRefusedException;

/**
 * What was pasted for the cells of a grid. Line breaks and semicolons end a row, tabs and bars a cell; a cell with nothing in it keeps its
 * place, so that no value slips into another cell.
 */
public final class PastedCells {

    /** Two columns side by side are mostly what should be read and what was. */
    private static final int FEWEST_COLUMNS = 3;

    private PastedCells() {
    }

    /**
     * The values in the order in which the cells are read, from the one that is asked for on; one that is empty in what was pasted is an empty
     * text. One column or one row is taken; more only if it is the whole grid, and can be told which way round.
     *
     * @param typed what was typed or pasted
     * @throws EntryRefusedException if it is several columns of anything else, or begins with an empty cell
     */
    public static List<String> of(String typed, Demand.ReadCell asked) throws EntryRefusedException {
        List<List<String>> rows = rows(typed);
        int width = rows.stream().mapToInt(List::size).max().orElse(0);
        List<String> values = rows.size() <= 1 || width <= 1 ? rows.stream().map(row -> row.isEmpty() ? List.of("") : row).flatMap(List::stream).toList()
                : block(rows, width, asked);
        if (values.size() > 1 && values.get(0).isEmpty()) {
            throw new EntryRefusedException(Hands.COLUMN_BEGINS_EMPTY.text());
        }
        return values;
    }

    private static List<List<String>> rows(String typed) {
        List<List<String>> rows = new ArrayList<>(Arrays.stream(typed.split("\\r\\n|[\\n\\r\\x0B\\f\\u0085\\u2028\\u2029;]", -1)).map(PastedCells::cells).toList());
        while (!rows.isEmpty() && rows.get(rows.size() - 1).isEmpty()) {
            rows.remove(rows.size() - 1);
        }
        return rows;
    }

    private static List<String> cells(String row) {
        List<String> cells = new ArrayList<>(Arrays.stream(row.split("[\\t|]", -1)).map(String::strip).toList());
        while (!cells.isEmpty() && cells.get(cells.size() - 1).isEmpty()) {
            cells.remove(cells.size() - 1);
        }
        return cells;
    }

    private static List<String> block(List<List<String>> rows, int width, Demand.ReadCell asked) throws EntryRefusedException {
        List<Action.Axis> axes = asked.grid().axes();
        int down = axes.get(axes.size() - 1).values().size();
        int across = axes.stream().mapToInt(axis -> axis.values().size()).reduce(1, Math::multiplyExact) / down;
        boolean whole = asked.cell() == 0 && across >= FEWEST_COLUMNS && across != down;
        if (whole && rows.size() == down && width == across) {
            return IntStream.range(0, width).boxed().flatMap(at -> rows.stream().map(row -> cell(row, at))).toList();
        } else if (whole && rows.size() == across && width == down) {
            return rows.stream().flatMap(row -> IntStream.range(0, width).mapToObj(at -> cell(row, at))).toList();
        }
        throw new EntryRefusedException(Hands.COLUMN_BLOCK.text(rows.size(), width));
    }

    private static String cell(List<String> row, int at) {
        return at < row.size() ? row.get(at) : "";
    }
}
