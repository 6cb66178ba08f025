package org.benchwright.ui.internal.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.language.LanguageServices;
import org.benchwright.present.BatchStart;
import org.benchwright.present.RevisionRow;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.ProcedureFiles;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.look.Switched;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks for procedure, serial number and technician, and stays until the test is open, or the first of a batch. */
final class NewTestDialog extends FieldsDialog {

    private static final int WHY_LINES = 3;
    private static final int PATIENCE = 300;
    private static final String USUALLY_APART = "5 min";

    private final Desk desk;
    private final Settings settings;
    private final String unit;
    private final Optional<Path> first;
    private final List<Path> files = new ArrayList<>();
    private Combo procedure;
    private Text serial;
    private Text apart;
    private List<Control> ofSeveral = List.of();
    private Text technician;
    private Button rehearsal;
    private Label why;
    private final Runnable asking = this::ask;

    /**
     * @param unit  the serial number that is filled in already; may be empty
     * @param first the procedure that is selected first, wherever its file is; empty for the usual one
     */
    NewTestDialog(Shell parent, Desk desk, Settings settings, String unit, Optional<Path> first) {
        super(parent, Message.NEW_TITLE.text(), Message.NEW_WHAT.text(), 3, Message.NEW_OPEN.text());
        this.unit = unit;
        this.desk = desk;
        this.settings = settings;
        this.first = first;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        label(fields, Message.NEW_PROCEDURE);
        procedure = new Combo(fields, SWT.READ_ONLY | SWT.DROP_DOWN);
        GridDataFactory.fillDefaults().grab(true, false).hint(420, SWT.DEFAULT).applyTo(procedure);
        Buttons.push(fields, Message.NEW_BROWSE.text(), this::browse);
        label(fields, Message.NEW_SERIAL);
        serial = text(fields);
        // A list is pasted as it comes; in one line its breaks would not be seen.
        serial.addListener(SWT.Verify, event -> event.text = event.text.replaceAll("\\R", " "));
        label(fields, Message.NEW_TECHNICIAN);
        technician = text(fields);
        technician.setText(settings.technician());
        new Label(fields, SWT.NONE);
        rehearsal = new Button(fields, SWT.CHECK);
        rehearsal.setText(Message.NEW_REHEARSAL.text());
        rehearsal.setSelection(settings.demo());
        GridDataFactory.fillDefaults().span(2, 1).applyTo(rehearsal);
        new Label(fields, SWT.NONE);
        why = new Label(fields, SWT.WRAP);
        GridDataFactory.fillDefaults().span(2, 1).hint(420, WHY_LINES * why.computeSize(SWT.DEFAULT, SWT.DEFAULT).y).applyTo(why);
        apart(fields);
        procedure.addListener(SWT.Selection, event -> ask());
        serial.addListener(SWT.Modify, event -> typed());
        fill();
        ask();
        serial.setText(unit);
        serial.setFocus();
    }

    private static Label label(Composite parent, Message text) {
        Label label = new Label(parent, SWT.NONE);
        label.setText(text.text());
        return label;
    }

    private static Text text(Composite parent) {
        Text text = new Text(parent, SWT.BORDER);
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).applyTo(text);
        return text;
    }

    /** Seen only where there are several units; its room is kept, since a dialog that grows under the hand is no help. */
    private void apart(Composite fields) {
        Label label = label(fields, Message.NEW_APART);
        apart = text(fields);
        apart.setText(USUALLY_APART);
        new Label(fields, SWT.NONE);
        Label what = new Label(fields, SWT.WRAP);
        what.setText(Message.NEW_APART_WHAT.text());
        GridDataFactory.fillDefaults().span(2, 1).hint(420, SWT.DEFAULT).applyTo(what);
        ofSeveral = List.of(label, apart, what);
        ofSeveral.forEach(each -> each.setVisible(false));
    }

    private void typed() {
        boolean several = BatchStart.several(serial.getText());
        if (several != apart.getVisible()) {
            ofSeveral.forEach(each -> each.setVisible(several));
            setMessage(words());
        }
        askSoon();
    }

    @Override
    protected String words() {
        return (BatchStart.several(serial.getText()) ? Message.NEW_SEVERAL : Message.NEW_WHAT).text();
    }

    private void fill() {
        try {
            ProcedureFiles.procedures(settings.procedures()).forEach(this::offer);
        } catch (IOException e) {
            setErrorMessage(Message.PROCEDURES_UNREADABLE.text(String.valueOf(e.getMessage())));
        }
        for (int i = 0; i < files.size(); i++) {
            if (files.get(i).getFileName().toString().contains("c16-acceptance")) {
                procedure.select(i);
            }
        }
        first.ifPresent(file -> {
            if (!files.contains(file)) {
                offer(file);
            }
            procedure.select(files.indexOf(file));
        });
    }

    private void offer(Path file) {
        files.add(file);
        procedure.add(String.valueOf(file.getFileName()));
    }

    private void browse() {
        FileDialog dialog = new FileDialog(getShell(), SWT.OPEN);
        dialog.setFilterExtensions(new String[] {"*" + LanguageServices.PROCEDURE_ENDING});
        settings.procedures().ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        Optional.ofNullable(dialog.open()).ifPresent(chosen -> {
            offer(Path.of(chosen));
            procedure.select(files.size() - 1);
            ask();
        });
    }

    /** Asks soon, so that a serial number is typed, or scanned, to its end. */
    private void askSoon() {
        Display display = getShell().getDisplay();
        display.timerExec(-1, asking);
        display.timerExec(PATIENCE, asking);
    }

    /**
     * Which family the unit is of follows from its serial number, and each has an approval of its own. A file that can't be read is refused when it
     * is opened.
     */
    private void ask() {
        int chosen = procedure.isDisposed() ? -1 : procedure.getSelectionIndex();
        if (chosen < 0) {
            return;
        }
        String of = serial.getText().strip();
        desk.standing(files.get(chosen), of).thenApply(Optional::of).exceptionally(unreadable -> Optional.empty())
                .thenAccept(standing -> OnDisplay.later(procedure, () -> {
                    if (procedure.getSelectionIndex() == chosen && serial.getText().strip().equals(of)) {
                        show(standing);
                    }
                }));
    }

    private void show(Optional<RevisionRow> standing) {
        Optional<RevisionRow> draft = standing.filter(row -> row.state() != RevisionRow.State.APPROVED);
        if (draft.isPresent()) {
            rehearsal.setSelection(true);
        } else if (!rehearsal.isEnabled()) {
            rehearsal.setSelection(settings.demo());
        }
        Switched.enable(rehearsal, draft.isEmpty());
        Labels.say(why, draft.map(row -> Message.NEW_DRAFT.text(row.procedure(), String.valueOf(row.number()), row.family(),
                row.words())).orElse(""));
    }

    @Override
    protected void okPressed() {
        Optional<Message> missing = missing();
        if (missing.isPresent()) {
            setErrorMessage(missing.get().text());
            return;
        }
        Desk.Request request = new Desk.Request(files.get(procedure.getSelectionIndex()), serial.getText().strip(),
                technician.getText().strip(), settings.station(), rehearsal.getSelection());
        begun(Message.NEW_OPENING.text(), desk.openBatch(request, apart.getText()));
    }

    private Optional<Message> missing() {
        if (procedure.getSelectionIndex() < 0) {
            return Optional.of(Message.NEW_NO_PROCEDURE);
        } else if (serial.getText().isBlank()) {
            return Optional.of(Message.NEW_NO_SERIAL);
        }
        return technician.getText().isBlank() ? Optional.of(Message.NEW_NO_TECHNICIAN) : Optional.empty();
    }
}
