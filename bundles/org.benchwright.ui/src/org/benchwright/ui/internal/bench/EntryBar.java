package org.benchwright.ui.internal.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

import org.benchwright.present.Command;
import org.benchwright.present.EntryKind;
import org.benchwright.present.PastedText;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.house.HouseMessage;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Where the technician types: one field for each part of the answer. Everything goes by keyboard alone. */
final class EntryBar extends Composite {

    private static final int FIELD = 40;
    private static final int PROMPT = 24;
    /** Beside the fields, in pixels of a card of full size. */
    static final int MARGIN = 28;
    /** Height of a field to that of its font's em square. A field itself grows to its font too slowly to be laid out by. */
    private static final double LINE_HEIGHT = 1.5;

    private static final Pattern COLUMN = Pattern.compile("[\\r\\n\\t]");

    private final Fonts fonts;
    private final Listener listener;
    private final List<Text> fields = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();
    /** The fields that were made last, even while nothing is asked. */
    private List<Text> made = List.of();
    private List<String> prompts = List.of();
    private Form form = Form.NONE;
    private final Taps taps = new Taps();
    private EntryKind kind = EntryKind.NOTHING;
    private Optional<Label> offered = Optional.empty();
    private Optional<FaultTable> log = Optional.empty();
    private String offeredNow = "";

    /** What was typed. */
    interface Listener {

        /** An answer, one for each part. */
        void entered(List<String> parts);

        /** A password or PIN, which whoever takes it blanks out. */
        void secret(char[] typed);

        /** Taps along with a lamp, when each came in ns. */
        void tapped(List<Long> taps);

        /** Something that can be done at any time. */
        void command(Command command);

        /** Back to the question. */
        void escaped();

        /** Another part of the card is to be seen, up for -1 and down for 1. */
        void paged(int pages);
    }

    EntryBar(Composite parent, Fonts fonts, Listener listener) {
        super(parent, SWT.NONE);
        this.fonts = fonts;
        this.listener = listener;
    }

    /**
     * What the entry is made of. Whoever goes through fifty units is mostly asked for as much as before, or for nothing for a moment: then the same
     * fields ask again, as making controls is what takes longest.
     *
     * @param parts   so many fields
     * @param secret  true if what is typed doesn't show
     * @param chooses true with a button that chooses a file
     * @param table   true for a fault log
     * @param scale   see {@link Flow#scale}
     */
    private record Form(int parts, boolean secret, boolean chooses, boolean table, double scale) {

        static final Form NONE = new Form(0, false, false, false, 0);

        static Form of(Asking asking, double scale) {
            EntryKind kind = asking.kind();
            return new Form(asking.prompts().size(), kind == EntryKind.SECRET, kind == EntryKind.FILE, kind == EntryKind.LINES, scale);
        }

        /** True if its fields can ask again. */
        boolean plain() {
            return !chooses && !table;
        }

        /** True if as much as this is hidden while that is asked. */
        boolean rests(Form asked) {
            return plain() && asked.plain() && asked.parts == 0 && asked.scale == scale;
        }
    }

    /** Asks for other parts; what was typed is thrown away. To be laid out by whoever asks. */
    void ask(Asking next, double scale) {
        prompts = next.prompts();
        kind = next.kind();
        taps.clear();
        Form asked = Form.of(next, scale);
        if (form.rests(asked)) {
            // As in make: first forgotten.
            fields.clear();
            made.forEach(field -> field.setText(""));
            show(false);
        } else if (asked.equals(form) && form.plain()) {
            fields.clear();
            fields.addAll(made);
            for (int i = 0; i < prompts.size(); i++) {
                Labels.say(labels.get(i), prompts.get(i));
                fields.get(i).setText("");
            }
            show(true);
        } else {
            form = asked;
            make(next);
        }
    }

    private void show(boolean shown) {
        for (Control child : getChildren()) {
            if (child.getVisible() != shown) {
                child.setVisible(shown);
                ((GridData) child.getLayoutData()).exclude = !shown;
            }
        }
    }

    private void make(Asking next) {
        double scale = form.scale();
        // First forgotten, then disposed of: a field that goes gives its focus away, and would get it back.
        fields.clear();
        labels.clear();
        log = Optional.empty();
        for (Control child : getChildren()) {
            child.dispose();
        }
        offered = Optional.empty();
        GridLayoutFactory.swtDefaults().numColumns(Math.max(1, prompts.size() + (form.chooses() ? 1 : 0))).margins((int) (MARGIN * scale), 4)
                .equalWidth(prompts.size() > 1).applyTo(this);
        prompts.forEach(prompt -> labels.add(label(prompt, scale)));
        if (form.chooses()) {
            offered = Optional.of(new Label(this, SWT.NONE));
            offered.get().setFont(fonts.of((int) (PROMPT * scale), true));
        }
        if (form.table()) {
            log = Optional.of(new FaultTable(this, fonts, scale, next.notes(), new TableKeys()));
            GridDataFactory.fillDefaults().grab(true, false).span(prompts.size(), 1).applyTo(log.get());
        } else {
            for (int i = 0; i < prompts.size(); i++) {
                fields.add(field(i, scale));
            }
        }
        made = List.copyOf(fields);
        if (form.chooses()) {
            chooser(scale);
        }
    }

    /** Keys in a fault log. */
    private final class TableKeys implements FaultTable.Keys {

        @Override
        public boolean taken(Text field, Event event) {
            if (event.keyCode == FootSwitch.key()) {
                getDisplay().beep();
                return true;
            }
            // In a row that has something in it, the mark is part of the log.
            boolean mark = event.character == '!' && log.filter(table -> table.inEmptyRow(field)).isEmpty();
            return !mark && own(field, event);
        }

        @Override
        public void command(Command command) {
            listener.command(command);
        }

        @Override
        public void done() {
            submit();
        }
    }

    private Label label(String prompt, double scale) {
        Label label = new Label(this, SWT.WRAP);
        Labels.say(label, prompt);
        label.setFont(fonts.of((int) (PROMPT * scale), false));
        GridDataFactory.fillDefaults().grab(true, false).hint(200, SWT.DEFAULT).applyTo(label);
        return label;
    }

    private Text field(int part, double scale) {
        Composite room = new Composite(this, SWT.NONE);
        room.setLayout(new FillLayout());
        GridDataFactory.fillDefaults().grab(true, false).hint(200, (int) (FIELD * LINE_HEIGHT * scale)).applyTo(room);
        Text text = new Text(room, SWT.BORDER | SWT.SINGLE | (kind == EntryKind.SECRET ? SWT.PASSWORD : SWT.NONE));
        text.setFont(fonts.of((int) (FIELD * scale), false));
        text.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = part < prompts.size() ? prompts.get(part) : "";
            }
        });
        text.addListener(SWT.KeyDown, event -> pressed(text, event));
        // A column pasted from a table: one field has one line.
        text.addListener(SWT.Verify, event -> event.text = COLUMN.matcher(event.text).find() ? PastedText.inOneLine(event.text) : event.text);
        return text;
    }

    /**
     * A file is offered: where one is asked for and none was named yet, Enter takes it.
     *
     * @param file a new picture, or one that was dropped here
     */
    void offer(Path file) {
        if (kind == EntryKind.FILE && !fields.isEmpty() && (fields.get(0).getText().isBlank() || offeredNow.equals(fields.get(0).getText()))) {
            offeredNow = file.toString();
            fields.get(0).setText(offeredNow);
            fields.get(0).setSelection(offeredNow.length());
            fields.get(0).setFocus();
            offered.ifPresent(label -> Labels.say(label, HouseMessage.PICTURE_OFFERED.text(String.valueOf(file.getFileName()))));
            layout(true, true);
        }
    }

    private void chooser(double scale) {
        Button button = Buttons.push(this, Message.CARD_CHOOSE_FILE.text(), () -> {
            Optional.ofNullable(new FileDialog(getShell(), SWT.OPEN).open()).ifPresent(fields.get(0)::setText);
            fields.get(0).setFocus();
        });
        button.setFont(fonts.of((int) (PROMPT * scale), false));
    }

    private void pressed(Text text, Event event) {
        boolean enter = event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR || event.keyCode == SWT.LF;
        if (own(text, event)) {
            event.doit = false;
        } else if (kind == EntryKind.SECRET) {
            if (enter) {
                event.doit = false;
                listener.secret(text.getTextChars());
                text.setText("");
            }
        } else if (event.keyCode == FootSwitch.key()) {
            event.doit = false;
            stepped(text);
        } else if (event.character == ' ' && kind == EntryKind.SEE && taps.takes(text.getText())) {
            event.doit = false;
            // When the key was pressed, not when the window came to it: that may be busy.
            text.setText(taps.add(event.time));
            text.setSelection(text.getText().length());
        } else if (event.character == ' ' && kind == EntryKind.MARK && text.getText().isEmpty()) {
            event.doit = false;
            submit();
        } else if (enter) {
            entered(text, event);
        }
    }

    /** Keys that do the same in every field; true if it was one. */
    private boolean own(Text text, Event event) {
        if (event.keyCode == SWT.ESC) {
            listener.escaped();
        } else if (event.keyCode == SWT.PAGE_UP || event.keyCode == SWT.PAGE_DOWN) {
            listener.paged(event.keyCode == SWT.PAGE_UP ? -1 : 1);
        } else if (event.character == '!' && text.getText().isEmpty() && kind != EntryKind.SECRET) {
            listener.command(new Command.MakeSafe(""));
        } else {
            return false;
        }
        return true;
    }

    /** The foot switch hands in what was typed, or else gives the card's main answer. */
    private void stepped(Text text) {
        boolean typed = fields.stream().anyMatch(field -> !field.getText().isBlank());
        Optional<String> answer = typed || fields.size() != 1 ? Optional.empty() : FootSwitch.answer(kind);
        if (answer.isPresent()) {
            text.setText(answer.get());
        }
        if (answer.isPresent() || typed) {
            submit();
        } else {
            getDisplay().beep();
        }
    }

    private void entered(Text text, Event event) {
        event.doit = false;
        Optional<Command> command = Command.parse(text.getText());
        int next = fields.indexOf(text) + 1;
        if (command.isPresent()) {
            text.setText("");
            listener.command(command.get());
        } else if (next < fields.size()) {
            fields.get(next).setFocus();
        } else {
            submit();
        }
    }

    /** Hands in what was typed, as Enter in the last field does. */
    void submit() {
        List<Long> tapped = fields.size() == 1 ? taps.in(fields.get(0).getText()) : List.of();
        if (!tapped.isEmpty()) {
            taps.clear();
            fields.get(0).setText("");
            listener.tapped(tapped);
            return;
        }
        listener.entered(log.map(table -> List.of(table.typed())).orElseGet(() -> fields.stream().map(field -> field.getText().strip()).toList()));
    }

    /** The fields, in the order of the parts, or row by row. */
    List<Text> fields() {
        return log.map(FaultTable::fields).orElseGet(() -> List.copyOf(fields));
    }

    /** What was typed so far, one text for each field, or one for all rows. */
    List<String> typed() {
        return log.map(table -> List.of(table.typed())).orElseGet(() -> fields.stream().map(Text::getText).toList());
    }

    /** Puts back what was typed, where the fields are as many as then. */
    void type(List<String> typed) {
        if (log.isPresent()) {
            log.get().type(typed.size() == 1 ? typed.get(0) : "");
        } else if (typed.size() == fields.size()) {
            for (int i = 0; i < typed.size(); i++) {
                fields.get(i).setText(typed.get(i));
                fields.get(i).setSelection(typed.get(i).length());
            }
        }
    }

    @Override
    public boolean setFocus() {
        return log.map(FaultTable::goOn).orElseGet(() -> !fields.isEmpty() && (fields.get(0).isFocusControl() || fields.get(0).setFocus()));
    }
}
