package org.benchwright.ui.internal.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Progress;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Impact;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.Columns;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.benchwright.ui.internal.look.Switched;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Which tests an instrument touches that read wrong: asked here, listed, and written as a sheet that the bench signs. */
final class ImpactDialog extends FieldsDialog {

    private static final int WIDTH = 880;
    private static final int HEIGHT = 260;
    private static final int DETAIL_HEIGHT = 90;

    private final Path ledger;
    private final String software;
    private Text asset;
    private Text reads;
    private Text from;
    private Text to;
    private Button look;
    private Button write;
    private Columns<Impact.Row> columns;
    private TableViewer table;
    private Text detail;
    private Optional<Job> job = Optional.empty();
    private Optional<Impact> found = Optional.empty();

    ImpactDialog(Shell parent, Path ledger, String software) {
        super(parent, Message.IMPACT_TITLE.text(), Message.IMPACT_WHAT.text(), 4, IDialogConstants.CLOSE_LABEL);
        this.ledger = ledger;
        this.software = software;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        asset = text(fields, Message.IMPACT_ASSET, "");
        reads = text(fields, Message.IMPACT_READS, "");
        reads.setMessage(Message.IMPACT_READS_HINT.text());
        from = text(fields, Message.IMPACT_FROM, today.minusYears(1).toString());
        to = text(fields, Message.IMPACT_TO, today.toString());
        columns = Columns.in(fields, SWT.NONE, Impact.Row.class);
        table = columns.table();
        GridDataFactory.fillDefaults().grab(true, true).span(4, 1).hint(WIDTH, HEIGHT).applyTo(table.getControl());
        columns.add(Message.RECORDS_SERIAL.text(), 120, Impact.Row::serial);
        columns.add(Message.IMPACT_THEN.text(), 130, Impact.Row::then);
        columns.add(Message.IMPACT_NOW.text(), 200, row -> (row.changed() ? "\u2260 " : "= ") + row.now());
        columns.add(Message.IMPACT_STANDING.text(), 240, Impact.Row::standing);
        columns.addWide(Message.IMPACT_TEST.text(), 150, Impact.Row::test);
        detail = new Text(fields, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        GridDataFactory.fillDefaults().grab(true, false).span(4, 1).hint(WIDTH, DETAIL_HEIGHT).applyTo(detail);
        table.addSelectionChangedListener(event -> picked());
        area.addDisposeListener(event -> job.ifPresent(Job::cancel));
    }

    private static Text text(Composite parent, Message label, String initial) {
        new Label(parent, SWT.NONE).setText(label.text());
        Text text = new Text(parent, SWT.BORDER);
        text.setText(initial);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
        return text;
    }

    private void picked() {
        columns.selected().ifPresent(row -> detail.setText(String.join("\n", row.words())));
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        look = createButton(parent, IDialogConstants.CLIENT_ID, Message.IMPACT_LOOK.text(), true);
        write = createButton(parent, IDialogConstants.CLIENT_ID + 1, Message.IMPACT_WRITE.text(), false);
        createButton(parent, IDialogConstants.OK_ID, IDialogConstants.CLOSE_LABEL, false);
        Switched.enable(write, false);
    }

    @Override
    protected void buttonPressed(int id) {
        if (id == IDialogConstants.CLIENT_ID) {
            look();
        } else if (id == IDialogConstants.CLIENT_ID + 1) {
            write();
        } else {
            super.buttonPressed(id);
        }
    }

    // ---- looking, off the screen's thread

    private void look() {
        try {
            Impact.Question question = new Impact.Question(asset.getText(), reads.getText(), LocalDate.parse(from.getText().strip()),
                    LocalDate.parse(to.getText().strip()));
            setErrorMessage(null);
            Switched.enable(look, false);
            forget();
            detail.setText(Message.IMPACT_LOOKING.text());
            job = Optional.of(Background.soon(Message.IMPACT_TITLE.text(), monitor -> {
                try {
                    Impact impact = Impact.of(ledger, question, ZoneId.systemDefault(), Progress.none(), monitor::isCanceled);
                    onScreen(() -> show(impact));
                } catch (EntryRefusedException | CannotStoreException | RuntimeException refused) {
                    // One that nobody foresaw would leave a look that never ends.
                    String why = Failures.words(refused);
                    onScreen(() -> refused(why));
                }
            }));
        } catch (DateTimeException noDay) {
            setErrorMessage(Message.FIGURES_NO_DAY.text());
        }
    }

    /** Nothing is to be written as the answer to another question than the one that is asked. */
    private void forget() {
        found = Optional.empty();
        table.setInput(List.of());
        Switched.enable(write, false);
    }

    private void show(Impact impact) {
        found = Optional.of(impact);
        table.setInput(impact.rows());
        detail.setText(String.join("\n", impact.left()));
        setMessage(impact.summary());
        Switched.enable(look, true);
        Switched.enable(write, true);
    }

    private void refused(String words) {
        setErrorMessage(words);
        detail.setText("");
        Switched.enable(look, true);
    }

    private void write() {
        FileDialog dialog = new FileDialog(getShell(), SWT.SAVE);
        dialog.setFileName("impact.txt");
        dialog.setOverwrite(true);
        String chosen = dialog.open();
        if (chosen != null && found.isPresent()) {
            write(found.get(), Path.of(chosen));
        }
    }

    /** Writes the sheet; whoever closes the dialog meanwhile takes it for written, and is told if it is not. */
    void write(Impact impact, Path file) {
        Shell window = getParentShell();
        Background.begun(Message.IMPACT_WRITE.text(), () -> writeSigned(impact, file))
                .whenComplete((done, failure) -> OnDisplay.later(window, () -> written(window, file, Optional.ofNullable(failure))));
    }

    private void writeSigned(Impact impact, Path file) throws CannotStoreException {
        try {
            Files.writeString(file, impact.signed(ledger, software, Clock.systemUTC().instant()));
        } catch (IOException | CannotStoreException failed) {
            throw new CannotStoreException(Message.IMPACT_NOT_WRITTEN.text(file.toString(), String.valueOf(failed.getMessage())), failed);
        }
    }

    private void written(Shell window, Path file, Optional<Throwable> failure) {
        if (getShell() != null) {
            setErrorMessage(failure.map(Failures::words).orElse(null));
            if (failure.isEmpty()) {
                setMessage(Message.IMPACT_WRITTEN.text(file.toString()));
            }
        } else {
            failure.ifPresent(why -> Failures.tell(window, Message.IMPACT_TITLE.text(), why));
        }
    }

    private void onScreen(Runnable work) {
        OnDisplay.later(table.getControl(), work);
    }
}
