package org.benchwright.ui.internal.look;

import java.util.function.Function;

import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TableViewerColumn;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.TableColumn;

/**
 * The columns of a table whose rows are values of one type.
 *
 * @param table the table
 * @param type  what a row is
 */
public record Columns<T>(TableViewer table, Class<T> type) {

    /** Adds a column of words. */
    public TableColumn add(String title, int width, Function<T, String> words) {
        TableViewerColumn column = new TableViewerColumn(table, SWT.LEFT);
        column.getColumn().setText(title);
        column.getColumn().setWidth(width);
        column.getColumn().setResizable(true);
        column.setLabelProvider(new ColumnLabelProvider() {
            @Override
            public String getText(Object row) {
                return words.apply(type.cast(row));
            }
        });
        return column.getColumn();
    }
}
