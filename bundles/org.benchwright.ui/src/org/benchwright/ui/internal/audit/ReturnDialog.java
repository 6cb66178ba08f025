package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;

import org.benchwright.present.Bench;
import org.benchwright.present.Returning;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks how a unit came back, and stays until that is on record. */
final class ReturnDialog extends FieldsDialog {

    private final Path ledger;
    private final Settings settings;
    private final String test;
    private final String serial;
    private final Runnable recorded;
    private Text on;
    private Text complaint;
    private Combo fault;
    private Text by;

    /** @param recorded is run once it is on record */
    ReturnDialog(Shell parent, Path ledger, Settings settings, String test, String serial, Runnable recorded) {
        super(parent, Message.RETURN_TITLE.text(), Message.RETURN_WHAT.text(serial, test), 2, Message.RETURN_BUTTON.text());
        this.ledger = ledger;
        this.settings = settings;
        this.test = test;
        this.serial = serial;
        this.recorded = recorded;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        on = text(fields, Message.RETURN_ON);
        on.setText(LocalDate.now(ZoneId.systemDefault()).toString());
        complaint = text(fields, Message.RETURN_COMPLAINT);
        new Label(fields, SWT.NONE).setText(Message.RETURN_FAULT.text());
        fault = new Combo(fields, SWT.READ_ONLY | SWT.DROP_DOWN);
        Returning.faults().forEach(fault::add);
        fault.select(0);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(fault);
        by = text(fields, Message.NEW_TECHNICIAN);
        by.setText(settings.technician());
        complaint.setFocus();
    }

    private static Text text(Composite parent, Message label) {
        new Label(parent, SWT.NONE).setText(label.text());
        Text text = new Text(parent, SWT.BORDER);
        GridDataFactory.fillDefaults().grab(true, false).hint(420, SWT.DEFAULT).applyTo(text);
        return text;
    }

    @Override
    protected void okPressed() {
        try {
            Returning.Entry entry = new Returning.Entry(test, LocalDate.parse(on.getText().strip()), complaint.getText(), fault.getText(),
                    by.getText(), settings.station(), settings.software());
            begun(words(), Background.begun(Message.RETURN_TITLE.text(), () -> Returning.record(ledger, entry, Bench.Clocks.system())));
        } catch (DateTimeException noDay) {
            setErrorMessage(Message.FIGURES_NO_DAY.text());
        }
    }

    @Override
    protected void done() {
        recorded.run();
    }
}
