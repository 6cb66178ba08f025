package org.benchwright.ui.internal.bench;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;

/** Three columns of fixed shares of the width, so that headings stand above their columns; a row is as high as its explanation needs. */
final class FaultTableLayout extends Layout {

    private static final double[] SHARES = {0.14, 0.32, 0.54};
    private static final int GAP = 8;
    private static final int BETWEEN = 6;

    private final int lowest;

    /** @param lowest height of a row at least, in pixels */
    FaultTableLayout(int lowest) {
        this.lowest = lowest;
    }

    @Override
    protected Point computeSize(Composite table, int width, int height, boolean flush) {
        int wide = width == SWT.DEFAULT ? table.getParent().getClientArea().width : width;
        Control[] cells = table.getChildren();
        int high = 0;
        for (int i = 0; i + 2 < cells.length; i += 3) {
            high += rowHeight(cells, i, wide);
        }
        return new Point(wide, high);
    }

    @Override
    protected void layout(Composite table, boolean flush) {
        Rectangle area = table.getClientArea();
        Control[] cells = table.getChildren();
        int y = area.y;
        for (int i = 0; i + 2 < cells.length; i += 3) {
            int high = rowHeight(cells, i, area.width);
            int x = area.x;
            for (int column = 0; column < SHARES.length; column++) {
                Control cell = cells[i + column];
                int wide = width(column, area.width);
                int own = Math.min(high, isField(column) ? lowest - BETWEEN : needed(cell, wide));
                cell.setBounds(x, y + (high - own) / 2, wide, own);
                x += wide + GAP;
            }
            y += high;
        }
    }

    /** A field itself grows to its font too slowly to be laid out by. */
    private boolean isField(int column) {
        return lowest > 0 && column < 2;
    }

    private int rowHeight(Control[] cells, int first, int wide) {
        int high = lowest;
        for (int column = 0; column < SHARES.length; column++) {
            high = Math.max(high, isField(column) ? 0 : needed(cells[first + column], width(column, wide)) + (lowest > 0 ? BETWEEN : 0));
        }
        return high;
    }

    private static int needed(Control cell, int wide) {
        return cell.computeSize(wide, SWT.DEFAULT, true).y;
    }

    private static int width(int column, int all) {
        return Math.max(20, (int) ((all - 2 * GAP) * SHARES[column]));
    }
}
