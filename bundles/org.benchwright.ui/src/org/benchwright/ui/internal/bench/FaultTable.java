package org.benchwright.ui.internal.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.benchwright.present.Command;
import org.benchwright.present.FaultNotes;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/**
 * A fault log as a table, entered by keyboard alone: a row for each line of the log, with its code, what stands beside it, and what the family's
 * notes tell of the code as soon as it is typed. Space goes from the code to what stands beside it, Enter to the next row; Enter on an empty last row
 * hands the log in. What is pasted fills rows.
 */
final class FaultTable extends Composite {

    private static final int FIELD = 34;
    private static final int WORDS = 24;
    /** Height of a row to that of its font's em square: room for two lines of an explanation. */
    private static final double LINE_HEIGHT = 1.8;
    private static final int ROWS_IN_SIGHT = 4;
    private static final Pattern SEVERAL = Pattern.compile("[\\r\\n\\t;]");

    private final Fonts fonts;
    private final double scale;
    private final FaultNotes notes;
    private final Keys keys;
    private final ScrolledComposite scroller;
    private final Composite body;
    private final List<Row> rows = new ArrayList<>();
    private Optional<Pasted> pasted = Optional.empty();
    /** While many rows change, they are laid out once, at the end. */
    private boolean filling;

    /** What keys do that are not the table's own. */
    interface Keys {

        /** A key that does the same in every field of the card; true if it was one. */
        boolean taken(Text field, Event event);

        /** Something that can be done at any time was typed into the empty table. */
        void command(Command command);

        /** The log is complete. */
        void done();
    }

    /** Text with more than a cell in it, which takes the place of what is in a row. */
    private record Pasted(Row row, String text) {
    }

    FaultTable(Composite parent, Fonts fonts, double scale, FaultNotes notes, Keys keys) {
        super(parent, SWT.NONE);
        this.fonts = fonts;
        this.scale = scale;
        this.notes = notes;
        this.keys = keys;
        GridLayoutFactory.fillDefaults().spacing(0, 2).applyTo(this);
        Composite heading = new Composite(this, SWT.NONE);
        heading.setLayout(new FaultTableLayout(0));
        Stream.of(Words.FAULTS_CODE, Words.FAULTS_BESIDE, Words.FAULTS_MEANS).forEach(word -> heading(heading, word));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(heading);
        scroller = new ScrolledComposite(this, SWT.V_SCROLL);
        scroller.setExpandHorizontal(true);
        scroller.setShowFocusedControl(true);
        body = new Composite(scroller, SWT.NONE);
        body.setLayout(new FaultTableLayout(rowHeight()));
        scroller.setContent(body);
        scroller.addListener(SWT.Resize, event -> fit());
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, ROWS_IN_SIGHT * rowHeight()).applyTo(scroller);
        fill(List.of());
    }

    private void heading(Composite heading, Words word) {
        Label label = new Label(heading, SWT.NONE);
        label.setText(word.text());
        label.setFont(fonts.of((int) (WORDS * scale), true));
    }

    private int rowHeight() {
        return (int) (FIELD * LINE_HEIGHT * scale) + 6;
    }

    /** The fields, row by row. */
    List<Text> fields() {
        return rows.stream().flatMap(row -> Stream.of(row.code, row.beside)).toList();
    }

    /** What was entered so far, as an answer. */
    String typed() {
        spread();
        return FaultNotes.answer(rows.stream().map(Row::value).toList());
    }

    /** Whether nothing stands in the row of that field. */
    boolean inEmptyRow(Text field) {
        return rows.stream().anyMatch(row -> (row.code == field || row.beside == field) && row.isEmpty());
    }

    /** Puts back what was entered. */
    void type(String typed) {
        boolean focused = fields().stream().anyMatch(Text::isFocusControl);
        fill(notes.rows(typed));
        if (focused) {
            goOn();
        }
    }

    /** Gives the focus to the row that is entered next. */
    boolean goOn() {
        return rows.get(rows.size() - 1).code.setFocus();
    }

    // ---- rows

    /** Shows these rows, and an empty one behind them. */
    private void fill(List<FaultNotes.Row> values) {
        body.setRedraw(false);
        filling = true;
        while (rows.size() > values.size() + 1) {
            rows.remove(rows.size() - 1).dispose();
        }
        while (rows.size() < values.size() + 1) {
            rows.add(new Row());
        }
        for (int i = 0; i < values.size(); i++) {
            rows.get(i).show(values.get(i));
        }
        rows.get(values.size()).show(notes.explain("", ""));
        filling = false;
        body.setRedraw(true);
        fit();
    }

    private void fit() {
        if (filling) {
            return;
        }
        Point size = body.computeSize(scroller.getClientArea().width, SWT.DEFAULT);
        if (!body.getSize().equals(size)) {
            body.setSize(size);
        }
        body.layout(true);
    }

    private void goTo(int index, boolean beside) {
        if (index == rows.size()) {
            rows.add(new Row());
            fit();
        }
        Row row = rows.get(index);
        (beside ? row.beside : row.code).setFocus();
        scroller.showControl(row.code);
    }

    /** What was pasted is spread over rows; those that stood below it stay below it. */
    private void spread() {
        Optional<Pasted> now = pasted.filter(each -> rows.contains(each.row()));
        pasted = Optional.empty();
        if (now.isPresent()) {
            int at = rows.indexOf(now.get().row());
            List<FaultNotes.Row> made = notes.rows(now.get().text());
            List<FaultNotes.Row> all = new ArrayList<>(rows.subList(0, at).stream().map(Row::value).toList());
            all.addAll(made);
            rows.subList(at + 1, rows.size()).stream().filter(row -> !row.isEmpty()).map(Row::value).forEach(all::add);
            fill(all);
            goTo(at + made.size(), false);
        }
    }

    // ---- keys

    private void pressed(Row row, Text field, Event event) {
        boolean enter = event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.keyCode == SWT.LF;
        if (keys.taken(field, event)) {
            event.doit = false;
        } else if (enter && pasted.isPresent()) {
            event.doit = false;
            spread();
        } else if (enter) {
            event.doit = false;
            entered(row);
        } else if (event.character == ' ' && field == row.code && leadsOn(field)) {
            event.doit = false;
            row.beside.setFocus();
        } else if (event.keyCode == SWT.ARROW_DOWN || event.keyCode == SWT.ARROW_UP) {
            event.doit = false;
            int next = rows.indexOf(row) + (event.keyCode == SWT.ARROW_DOWN ? 1 : -1);
            if (next >= 0 && next < rows.size()) {
                goTo(next, field == row.beside);
            }
        }
    }

    /** A space ends a code; within a note or another command it is a space, and so it is within what is typed already. */
    private static boolean leadsOn(Text code) {
        String typed = code.getText();
        return !typed.isBlank() && code.getCaretPosition() == typed.length() && Command.parse(typed + " x").isEmpty();
    }

    private void entered(Row row) {
        boolean alone = rows.stream().allMatch(each -> each == row || each.isEmpty());
        Optional<Command> command = alone ? Command.parse(row.line()) : Optional.empty();
        int at = rows.indexOf(row);
        if (command.isPresent()) {
            row.show(notes.explain("", ""));
            keys.command(command.get());
        } else if (row.isEmpty() && rows.subList(at, rows.size()).stream().allMatch(Row::isEmpty)) {
            keys.done();
        } else {
            row.settle();
            goTo(at + 1, false);
        }
    }

    /** A line of the log. */
    private final class Row {

        private final Text code = field(Words.FAULTS_CODE);
        private final Text beside = field(Words.FAULTS_BESIDE);
        private final Label words = new Label(body, SWT.WRAP);

        private Text field(Words name) {
            Text text = new Text(body, SWT.BORDER);
            text.setFont(fonts.of((int) (FIELD * scale), false));
            text.addListener(SWT.KeyDown, event -> pressed(this, text, event));
            text.addListener(SWT.Verify, event -> verify(text, event));
            text.addListener(SWT.Modify, event -> explain());
            text.getAccessible().addAccessibleListener(new AccessibleAdapter() {
                @Override
                public void getName(AccessibleEvent event) {
                    event.result = Words.FAULTS_ROW.text(name.text(), String.valueOf(rows.indexOf(Row.this) + 1));
                }

                @Override
                public void getDescription(AccessibleEvent event) {
                    event.result = Labels.said(words);
                }
            });
            return text;
        }

        private void verify(Text text, Event event) {
            if (SEVERAL.matcher(event.text).find()) {
                String now = text.getText();
                String whole = now.substring(0, event.start) + event.text + now.substring(event.end);
                pasted = Optional.of(new Pasted(this, text == code ? whole + " " + beside.getText() : code.getText() + " " + whole));
                event.doit = false;
                // The field is in the middle of a change: others can be filled behind it.
                OnDisplay.later(FaultTable.this, FaultTable.this::spread);
            }
        }

        private void explain() {
            Optional<FaultNotes.Row> first = notes.rows(line()).stream().findFirst();
            words.setFont(fonts.of((int) (WORDS * scale), first.filter(row -> !row.known()).isPresent()));
            if (Labels.say(words, first.map(FaultNotes.Row::words).orElse(""))) {
                fit();
            }
        }

        private String line() {
            return Stream.of(code, beside).map(field -> field.getText().strip()).collect(Collectors.joining(" ")).strip();
        }

        private FaultNotes.Row value() {
            return notes.explain(code.getText().strip(), beside.getText().strip());
        }

        private boolean isEmpty() {
            return line().isEmpty();
        }

        /** What was typed into one cell goes to where it belongs. */
        private void settle() {
            notes.rows(line()).stream().findFirst().ifPresent(this::show);
        }

        private void show(FaultNotes.Row value) {
            put(code, value.code());
            put(beside, value.text());
        }

        private static void put(Text field, String text) {
            if (!field.getText().equals(text)) {
                field.setText(text);
                // Its beginning is seen, unless it goes on being typed.
                field.setSelection(field.isFocusControl() ? text.length() : 0);
            }
        }

        private void dispose() {
            code.dispose();
            beside.dispose();
            words.dispose();
        }
    }
}
