package org.benchwright.ui.internal.bench;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.present.SharedBench;
import org.benchwright.present.UnitRow;
import org.benchwright.present.WallTime;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.Views;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.DeskListener;
import org.benchwright.ui.internal.desk.WaitingStart;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.LocalResourceManager;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.ui.part.ViewPart;

/** Units on the bench: every open test, whoever opened it, and those that wait to be begun; the selected one is on the step card. */
public final class UnitsView extends ViewPart {

    private static final int FEWEST_LINES = 4;
    private static final int INDENT = 6;
    private static final String CUT = "\u2026";

    private Desk desk;
    private Table table;
    private Font bold;
    private int lineHeight;
    private int rowWidth;
    /** So many lines has the unit about which most is told; every row is as high. */
    private int most = FEWEST_LINES;
    /** True from when rows need more room until they are drawn in it: the selected one may have grown over the lower edge then. */
    private boolean grown;
    /** The serial number of the waiting start that is selected here; empty where a unit on the bench is. */
    private String chosen = "";
    private final DeskListener listener = (change, test) -> changed(change);

    @Override
    public void createPartControl(Composite parent) {
        desk = getSite().getService(Desk.class);
        table = new Table(parent, SWT.SINGLE | SWT.FULL_SELECTION | SWT.V_SCROLL);
        new TableColumn(table, SWT.LEFT);
        LocalResourceManager resources = new LocalResourceManager(JFaceResources.getResources(parent.getDisplay()), table);
        table.setFont(resources.create(FontDescriptor.createFrom(table.getFont()).increaseHeight(3)));
        bold = resources.create(FontDescriptor.createFrom(table.getFont()).setStyle(SWT.BOLD));
        lineHeight = lineHeight();
        table.addListener(SWT.MeasureItem, this::measure);
        table.addListener(SWT.EraseItem, event -> event.detail &= ~SWT.FOREGROUND);
        table.addListener(SWT.PaintItem, this::paint);
        table.addListener(SWT.Resize, event -> resized());
        table.addListener(SWT.Selection, event -> selected(event.item.getData()));
        table.addListener(SWT.DefaultSelection, event -> waiting(event.item.getData()).ifPresent(start -> desk.beginNow(start.serial())));
        table.addListener(SWT.KeyDown, this::key);
        table.addDisposeListener(event -> desk.remove(listener));
        desk.add(listener);
        show();
    }

    /** Each unit has short lines: its serial number, its stage, its state (LIVE, on soak), its watch, and what time brings. */
    private void paint(Event event) {
        TableItem item = (TableItem) event.item;
        String[] lines = item.getText().split("\n", -1);
        boolean selected = (event.detail & SWT.SELECTED) != 0;
        if (selected && grown) {
            grown = false;
            OnDisplay.later(table, table::showSelection);
        }
        Color colour = selected ? table.getDisplay().getSystemColor(SWT.COLOR_LIST_SELECTION_TEXT)
                : table.getForeground();
        event.gc.setForeground(colour);
        for (int i = 0; i < lines.length; i++) {
            event.gc.setFont(i == 0 ? bold : table.getFont());
            event.gc.drawText(fitted(event.gc, lines[i], rowWidth - INDENT), event.x + INDENT, event.y + 4 + i * lineHeight, true);
        }
    }

    /** A line that is too long for a narrow window ends in sight. */
    private static String fitted(GC gc, String line, int width) {
        if (gc.textExtent(line).x <= width) {
            return line;
        }
        int end = line.length();
        while (end > 0 && gc.textExtent(line.substring(0, end) + CUT).x > width) {
            end--;
        }
        return line.substring(0, end).stripTrailing() + CUT;
    }

    /** Asked for every row whenever one is drawn: nothing is asked of the table in turn. */
    private void measure(Event event) {
        event.height = most * lineHeight + 10;
        event.width = Math.max(event.width, rowWidth);
    }

    private void resized() {
        int width = table.getClientArea().width;
        rowWidth = width - 8;
        table.getColumn(0).setWidth(width);
    }

    private int lineHeight() {
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            return gc.getFontMetrics().getHeight();
        } finally {
            gc.dispose();
        }
    }

    private void selected(Object row) {
        Optional<WaitingStart> start = waiting(row);
        chosen = start.map(WaitingStart::serial).orElse("");
        if (start.isEmpty()) {
            select((String) row);
        }
    }

    private static Optional<WaitingStart> waiting(Object row) {
        return row instanceof WaitingStart start ? Optional.of(start) : Optional.empty();
    }

    /** A test that is to be begun later is taken off only by somebody who was asked. */
    private void key(Event event) {
        Optional<WaitingStart> start = Stream.of(table.getSelection()).findFirst().flatMap(item -> waiting(item.getData()));
        if (event.keyCode == SWT.DEL && start.isPresent()
                && MessageDialog.openQuestion(getSite().getShell(), Message.LEAVE_WAITING_TITLE.text(),
                        Labels.letters(Message.WAITING_TAKE_OFF.text(start.get().serial())))) {
            desk.takeOff(start.get().serial());
        }
    }

    /** Whoever picks a unit wants its step card, whatever else lies over it. */
    private void select(String test) {
        desk.select(test);
        Views.uncover(getSite().getPage(), Ids.CARD_VIEW);
    }

    private void changed(DeskListener.Change change) {
        OnDisplay.later(table, () -> {
            // Whoever has gone to a unit by another way has left the start that was selected here.
            chosen = change == DeskListener.Change.SELECTION ? "" : chosen;
            show();
        });
    }

    private void show() {
        List<UnitRow> units = desk.units();
        List<WaitingStart> waiting = desk.waiting();
        List<List<String>> told = Stream.concat(units.stream().map(this::lines), waiting.stream().map(this::lines)).toList();
        int before = most;
        most = told.stream().mapToInt(List::size).reduce(FEWEST_LINES, Math::max);
        // With fifty units on the bench, what hasn't changed is left alone.
        if (table.getItemCount() != told.size()) {
            table.setItemCount(told.size());
        }
        int selected = -1;
        int next = -1;
        for (int i = 0; i < told.size(); i++) {
            TableItem item = table.getItem(i);
            String words = String.join("\n", told.get(i));
            if (!words.equals(item.getText())) {
                item.setText(words);
            }
            if (i < units.size()) {
                item.setData(units.get(i).test());
                selected = units.get(i).test().equals(desk.selected()) ? i : selected;
            } else {
                item.setData(waiting.get(i - units.size()));
                next = waiting.get(i - units.size()).serial().equals(chosen) ? i : next;
            }
        }
        mark(next < 0 ? selected : next);
        grown |= most > before;
        String line = desk.trouble().or(() -> alarm(units)).orElseGet(() -> units.isEmpty() ? Message.UNITS_NONE.text() : "");
        String description = String.join("  ", Stream.of(line, uncalled(), forwarding()).filter(words -> !words.isEmpty()).toList());
        if (!description.equals(getContentDescription())) {
            setContentDescription(description);
        }
    }

    private void mark(int selected) {
        if (selected < 0) {
            table.deselectAll();
        } else if (table.getSelectionIndex() != selected) {
            table.setSelection(selected);
        }
    }

    /** What waits to be forwarded, where this bench shares a ledger and something does. */
    private String forwarding() {
        Optional<SharedBench.State> state = desk.forwarding();
        return state.flatMap(SharedBench.State::since)
                .map(since -> Message.UNITS_FORWARD.text(state.get().waiting(), WallTime.here().near(since)))
                .orElse("");
    }

    private String uncalled() {
        return desk.uncalled().map(Message.UNITS_UNCALLED::text).orElse("");
    }

    /** What a watch wants somebody to come for, above all units. */
    private static Optional<String> alarm(List<UnitRow> units) {
        return units.stream().filter(UnitRow::alarm).map(unit -> Message.UNIT_ALARM.text(unit.serial(), unit.watch()))
                .reduce((one, other) -> one + "   " + other);
    }

    private static String title(UnitRow unit) {
        String serial = unit.rehearsal() ? Message.UNIT_REHEARSAL.text(unit.serial()) : unit.serial();
        return unit.position().map(position -> position + "  " + serial).orElse(serial);
    }

    private List<String> lines(UnitRow unit) {
        return Stream.of(title(unit), unit.stage(), state(unit), unit.watch(), when(unit), unit.reminder().orElse(""))
                .filter(line -> !line.isEmpty()).toList();
    }

    /** Why it was not begun is told in full: nobody is there to be told in a box. */
    private List<String> lines(WaitingStart start) {
        String serial = start.request().rehearsal() ? Message.UNIT_REHEARSAL.text(start.serial()) : start.serial();
        Stream<String> words = Stream.of(start.words(Instant.now(), ZoneId.systemDefault()), Message.WAITING_KEYS.text())
                .flatMap(each -> folded(each).stream());
        return Stream.concat(Stream.of(serial), words).toList();
    }

    private List<String> folded(String words) {
        GC gc = new GC(table);
        try {
            gc.setFont(table.getFont());
            List<String> lines = new ArrayList<>();
            for (String word : words.split("\\s+")) {
                int last = lines.size() - 1;
                if (last >= 0 && gc.textExtent(lines.get(last) + " " + word).x <= rowWidth - INDENT) {
                    lines.set(last, lines.get(last) + " " + word);
                } else {
                    lines.add(word);
                }
            }
            return lines;
        } finally {
            gc.dispose();
        }
    }

    private static String state(UnitRow unit) {
        return unit.soakLeft().map(left -> unit.state() + ", " + Message.UNIT_SOAK_LEFT.text(Durations.words(readable(left)))).orElse(unit.state());
    }

    /** Looks are taken at odd instants; of hours nobody at a rack reads the milliseconds. */
    private static Duration readable(Duration exactly) {
        return exactly.compareTo(Duration.ofHours(1)) < 0 ? Durations.wholeSeconds(exactly) : exactly.plusSeconds(30).truncatedTo(ChronoUnit.MINUTES);
    }

    private String when(UnitRow unit) {
        List<String> words = new ArrayList<>();
        unit.nextLook().ifPresent(at -> words.add((unit.overdue() ? Message.UNIT_OVERDUE : Message.UNIT_NEXT_LOOK)
                .text(WallTime.here().near(at))));
        if (desk.held(unit.test()).isEmpty()) {
            words.add(Message.UNIT_NOT_HERE.text());
        }
        return String.join(", ", words);
    }

    @Override
    public void setFocus() {
        table.setFocus();
    }
}
