package org.benchwright.ui.internal.bench;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.present.RoundStop;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.OpenTest;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.part.ViewPart;

/** Rounds: one visit to all units on soak, position by position; one key for each that is as expected. */
public final class RoundsView extends ViewPart {

    private static final DateTimeFormatter DAY_AND_TIME = DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH);

    private Desk desk;
    private Table table;
    private final DeskListener listener = (change, test) -> changed();

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        table = new Table(parent, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL);
        table.setHeaderVisible(true);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), table);
        table.setFont(resources.create(FontDescriptor.createFrom(table.getFont()).increaseHeight(5)));
        for (Words title : new Words[] {Words.ROUNDS_COLUMN_POSITION, Words.ROUNDS_COLUMN_UNIT, Words.ROUNDS_COLUMN_DUE}) {
            TableColumn column = new TableColumn(table, SWT.LEFT);
            column.setText(title.text());
            column.setWidth(160);
        }
        table.addListener(SWT.KeyDown, this::pressed);
        table.addDisposeListener(event -> desk.remove(listener));
        desk.add(listener);
        show();
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
        List<RoundStop> stops = RoundStop.of(desk.units());
        int selected = Math.max(0, table.getSelectionIndex());
        table.setItemCount(stops.size());
        for (int i = 0; i < stops.size(); i++) {
            RoundStop stop = stops.get(i);
            TableItem item = table.getItem(i);
            item.setText(new String[] {stop.position().orElse(""), stop.serial(), DAY_AND_TIME.format(stop.due().atZone(ZoneId.systemDefault()))});
            item.setData(stop);
        }
        if (!stops.isEmpty()) {
            table.setSelection(Math.min(selected, stops.size() - 1));
        }
        if (getContentDescription().isEmpty() || stops.isEmpty()) {
            setContentDescription((stops.isEmpty() ? Words.ROUNDS_NONE : Words.ROUNDS_HOW).text());
        }
    }

    private void pressed(Event event) {
        boolean expected = event.character == ' ' || event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.keyCode == FootSwitch.key();
        boolean other = event.character == 'n' || event.character == 'N';
        Optional<RoundStop> stop = table.getSelectionCount() == 0 ? Optional.empty() : Optional.of((RoundStop) table.getSelection()[0].getData());
        if (stop.isPresent() && (expected || other)) {
            event.doit = false;
            answer(stop.get(), expected);
        }
    }

    private void answer(RoundStop stop, boolean expected) {
        Optional<OpenTest> test = desk.held(stop.test());
        if (expected && test.filter(open -> open.shown().looksWithOneKey()).isPresent()) {
            test.get().lookAsExpected(test.get().shown().version());
            setContentDescription(Words.ROUNDS_LOOKED.text(stop.serial()));
            table.setSelection(Math.min(table.getSelectionIndex() + 1, table.getItemCount() - 1));
        } else {
            desk.select(stop.test());
            setContentDescription((test.isPresent() ? Words.ROUNDS_CARD : Words.ROUNDS_ELSEWHERE).text(stop.serial()));
        }
    }

    @Override
    public void setFocus() {
        table.setFocus();
    }
}
