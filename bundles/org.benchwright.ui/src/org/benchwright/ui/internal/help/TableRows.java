package org.benchwright.ui.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.CustomNode;

/**
 * A table by its rows, the first of which has what the columns are called.
 *
 * @param rows as many cells in each
 */
record TableRows(List<List<List<Run>>> rows) {

    /** Between two columns, in pixels. */
    static final int GAP = 18;

    static TableRows of(TableBlock table) {
        List<List<List<Run>>> rows = new ArrayList<>();
        table.accept(new AbstractVisitor() {
            @Override
            public void visit(CustomNode node) {
                if (node instanceof TableRow) {
                    rows.add(new ArrayList<>());
                }
                if (node instanceof TableCell cell) {
                    List<Run> runs = Runs.of(cell);
                    rows.get(rows.size() - 1).add(cell.isHeader() ? runs.stream().map(Run::strong).toList() : runs);
                } else {
                    visitChildren(node);
                }
            }
        });
        return new TableRows(rows);
    }

    /** For each column the widest of its cells, and the gap behind it. */
    List<Integer> widths(ToIntFunction<List<Run>> wide) {
        return IntStream.range(0, rows.get(0).size()).mapToObj(
                column -> GAP + rows.stream().mapToInt(row -> wide.applyAsInt(row.get(column))).max().orElse(0))
                .toList();
    }
}
