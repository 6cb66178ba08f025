package org.benchwright.ui.internal.look;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

import org.eclipse.jface.viewers.ArrayContentProvider;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;

/**
 * The columns of a table whose rows are values of one type.
 *
 * @param table the table
 * @param type  what a row is
 */
public record Columns<T>(TableViewer table, Class<T> type) {

    /**
     * A table in which one row at a time is selected, with a heading over each column; it is given its rows as a list.
     *
     * @param frame {@link SWT#BORDER}, or {@link SWT#NONE} where its surroundings are frame enough
     */
    public static <T> Columns<T> in(Composite parent, int frame, Class<T> type) {
        TableViewer table = new TableViewer(parent, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL | frame);
        table.getTable().setHeaderVisible(true);
        table.setContentProvider(ArrayContentProvider.getInstance());
        return new Columns<>(table, type);
    }

    /** The row that is selected. */
    public Optional<T> selected() {
        return Optional.ofNullable(table.getStructuredSelection().getFirstElement()).map(type::cast);
    }

    /**
     * Shows these rows in the place of those before. The one that was selected stays so, also where it says something else by now.
     *
     * @param name what a row is known by
     */
    public void show(List<T> rows, Function<T, ?> name) {
        if (rows.equals(table.getInput())) {
            return;
        }
        Optional<?> before = selected().map(name);
        table.setInput(rows);
        if (selected().isEmpty()) {
            before.flatMap(same -> rows.stream().filter(row -> name.apply(row).equals(same)).findFirst())
                    .ifPresent(row -> table.setSelection(new StructuredSelection(row), true));
        }
    }

    /** Adds a column of words. */
    public TableColumn add(String title, int width, Function<T, String> words) {
        return add(title, width, words, row -> Optional.empty());
    }

    /**
     * Adds a column of words.
     *
     * @param font in which a row's are written; empty for that of the table
     */
    public TableColumn add(String title, int width, Function<T, String> words, Function<T, Optional<Font>> font) {
        TableViewerColumn column = new TableViewerColumn(table, SWT.LEFT);
        column.getColumn().setText(title);
        column.getColumn().setWidth(width);
        column.setLabelProvider(new ColumnLabelProvider() {
            @Override
            public String getText(Object row) {
                return words.apply(type.cast(row));
            }

            @Override
            public Font getFont(Object row) {
                return font.apply(type.cast(row)).orElse(null);
            }
        });
        return column.getColumn();
    }

    /** Adds a column of words that takes what the others leave of the table's width, and no less than the given one. */
    public void addWide(String title, int least, Function<T, String> words) {
        fill(add(title, least, words), least);
    }

    /**
     * Lets a column take what the others leave of its table's width.
     *
     * @param least width in pixels that it has at least; then the table is scrolled
     */
    public static void fill(TableColumn column, int least) {
        Table table = column.getParent();
        table.addListener(SWT.Resize, event -> {
            int others = Stream.of(table.getColumns()).filter(each -> each != column).mapToInt(TableColumn::getWidth).sum();
            column.setWidth(Math.max(least, table.getClientArea().width - others));
        });
    }
}
