package org.benchwright.ui.internal.bench;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

import org.benchwright.core.Durations;
import org.benchwright.present.UnitRow;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.part.ViewPart;

/** Units on the bench: every open test, whoever opened it; the selected one is on the step card. */
public final class UnitsView extends ViewPart {

    private static final DateTimeFormatter DAY_AND_TIME = DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH);

    private Desk desk;
    private Table table;
    private Font bold;
    private final DeskListener listener = (change, test) -> changed();

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        table = new Table(parent, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL | SWT.H_SCROLL);
        table.setHeaderVisible(true);
        column(Message.UNIT, 190);
        column(Message.UNIT_STATE, 420);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), table);
        table.setFont(resources.create(FontDescriptor.createFrom(table.getFont()).increaseHeight(3)));
        bold = resources.create(FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD));
        table.addListener(SWT.Selection, event -> desk.select((String) event.item.getData()));
        table.addDisposeListener(event -> desk.remove(listener));
        desk.add(listener);
        show();
    }

    private void column(Message title, int width) {
        TableColumn column = new TableColumn(table, SWT.LEFT);
        column.setText(title.text());
        column.setWidth(width);
    }

    private void changed() {
        if (!table.isDisposed()) {
            table.getDisplay().asyncExec(() -> {
                if (!table.isDisposed()) {
                    show();
                }
            });
        }
    }

    private void show() {
        List<UnitRow> units = desk.units();
        table.setItemCount(units.size());
        table.deselectAll();
        for (int i = 0; i < units.size(); i++) {
            UnitRow unit = units.get(i);
            TableItem item = table.getItem(i);
            item.setText(new String[] {unit.serial(), words(unit)});
            item.setData(unit.test());
            item.setFont(unit.overdue() ? bold : table.getFont());
            if (unit.test().equals(desk.selected())) {
                table.setSelection(i);
            }
        }
        setContentDescription(desk.trouble().orElseGet(() -> units.isEmpty() ? Message.UNITS_NONE.text() : ""));
    }

    private String words(UnitRow unit) {
        StringBuilder words = new StringBuilder();
        unit.nextLook().ifPresent(at -> words.append((unit.overdue() ? Message.UNIT_OVERDUE : Message.UNIT_NEXT_LOOK)
                .text(DAY_AND_TIME.format(at.atZone(ZoneId.systemDefault())))).append(", "));
        words.append(unit.stage()).append(", ").append(unit.state());
        unit.soakLeft().ifPresent(left -> words.append(", ").append(Message.UNIT_SOAK_LEFT.text(Durations.words(left))));
        words.append(", ").append((desk.held(unit.test()).isPresent() ? Message.UNIT_HERE : Message.UNIT_NOT_HERE).text());
        return words.append(unit.rehearsal() ? ", " + Message.UNIT_REHEARSAL.text() : "").toString();
    }

    @Override
    public void setFocus() {
        table.setFocus();
    }
}
