package org.benchwright.ui.internal.author;

import java.util.List;

import org.benchwright.core.SheetTable;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;

/** Tables one under the other, each with its headings. */
final class SheetGrids {

    private final Composite body;
    private List<SheetTable> shown = List.of();

    SheetGrids(Composite parent) {
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(body);
    }

    void show(List<SheetTable> tables) {
        if (tables.equals(shown)) {
            return;
        }
        shown = tables;
        boolean alike = body.getChildren().length == tables.size();
        if (!alike) {
            for (var old : body.getChildren()) {
                old.dispose();
            }
            tables.forEach(this::make);
        }
        for (int i = 0; i < tables.size(); i++) {
            Table table = (Table) body.getChildren()[i];
            fill(table, tables.get(i));
            size(table, i + 1 == tables.size());
        }
        body.layout(true, true);
    }

    private void make(SheetTable sheet) {
        Table table = new Table(body, SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
        table.setHeaderVisible(true);
        sheet.headings().forEach(heading -> new TableColumn(table, SWT.LEFT).setText(heading));
    }

    /** Each is as high as its rows; the last has what is left. */
    private static void size(Table table, boolean last) {
        int height = table.computeSize(SWT.DEFAULT, SWT.DEFAULT).y;
        GridDataFactory.fillDefaults().grab(true, last).hint(SWT.DEFAULT, last ? SWT.DEFAULT : height).applyTo(table);
    }

    private static void fill(Table table, SheetTable sheet) {
        table.setRedraw(false);
        table.setItemCount(sheet.rows().size());
        for (int row = 0; row < sheet.rows().size(); row++) {
            TableItem item = table.getItem(row);
            item.setText(sheet.rows().get(row).toArray(String[]::new));
        }
        for (TableColumn column : table.getColumns()) {
            column.pack();
        }
        table.setRedraw(true);
    }
}
