package org.benchwright.ui.internal.look;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.core.SheetTable;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;

/** Tables one under the other, each with its headings. Rows are copied with Ctrl+C, those that are selected or all, as a spreadsheet takes them. */
public final class SheetGrids {

    /** Of a table with others below it; it scrolls behind so many. */
    private static final int MOST_ROWS = 12;

    private final Composite body;
    private List<SheetTable> shown = List.of();

    /** Makes an empty one. */
    public SheetGrids(Composite parent) {
        body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(body);
    }

    /** Shows these, with their rows, in the place of those before. */
    public void show(List<SheetTable> tables) {
        if (tables.equals(shown)) {
            return;
        }
        if (!headings(tables).equals(headings(shown))) {
            for (var old : body.getChildren()) {
                old.dispose();
            }
            tables.forEach(this::make);
        }
        shown = List.copyOf(tables);
        for (int i = 0; i < tables.size(); i++) {
            Table table = (Table) body.getChildren()[i];
            fill(table, tables.get(i));
            size(table, i + 1 == tables.size());
        }
        body.layout(true, true);
    }

    private static List<List<String>> headings(List<SheetTable> tables) {
        return tables.stream().map(SheetTable::headings).toList();
    }

    private void make(SheetTable sheet) {
        Table table = new Table(body, SWT.MULTI | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
        table.setHeaderVisible(true);
        sheet.headings().forEach(heading -> new TableColumn(table, SWT.LEFT).setText(heading));
        table.addListener(SWT.KeyDown, event -> pressed(table, event));
    }

    /** Each is as high as its rows; the last has what is left. */
    private static void size(Table table, boolean last) {
        int most = table.getHeaderHeight() + MOST_ROWS * table.getItemHeight();
        int height = Math.min(most, table.computeSize(SWT.DEFAULT, SWT.DEFAULT).y);
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

    private static void pressed(Table table, Event event) {
        if (event.keyCode == 'c' && event.stateMask == SWT.MOD1) {
            Clipping.copy(table.getDisplay(), copied(table));
        }
    }

    private static String copied(Table table) {
        TableItem[] rows = table.getSelectionCount() == 0 ? table.getItems() : table.getSelection();
        Stream<String> headings = Stream.of(Stream.of(table.getColumns()).map(TableColumn::getText).collect(Collectors.joining("\t")));
        return Stream.concat(headings, Stream.of(rows).map(row -> line(row, table.getColumnCount()))).collect(Collectors.joining("\n"));
    }

    private static String line(TableItem row, int columns) {
        return Stream.iterate(0, column -> column + 1).limit(columns).map(row::getText).collect(Collectors.joining("\t"));
    }
}
