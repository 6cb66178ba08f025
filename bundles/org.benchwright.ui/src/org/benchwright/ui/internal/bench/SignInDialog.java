package org.benchwright.ui.internal.bench;

import java.util.List;

import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Somebody signs in at this station: initials, password, and the PIN that is good until it is locked. */
final class SignInDialog extends FieldsDialog {

    private final Desk desk;
    private final String offered;
    private Text id;
    private Text password;
    private Text pin;

    SignInDialog(Shell parent, Desk desk, String offered) {
        super(parent, Words.SIGN_IN_TITLE.text(), Words.SIGN_IN_WHAT.text(), 2, Words.SIGN_IN_TITLE.text());
        this.desk = desk;
        this.offered = offered;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        id = field(fields, Words.SIGN_IN_ID, SWT.NONE);
        id.setText(desk.station().person().orElse(offered));
        password = field(fields, Words.SIGN_IN_PASSWORD, SWT.PASSWORD);
        pin = field(fields, Words.SIGN_IN_PIN, SWT.PASSWORD);
        (id.getText().isEmpty() ? id : password).setFocus();
    }

    private static Text field(Composite parent, Words label, int style) {
        new Label(parent, SWT.NONE).setText(label.text());
        Text text = new Text(parent, SWT.BORDER | SWT.SINGLE | style);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
        return text;
    }

    /** The key opens slowly by intent, so not in the screen's thread. */
    @Override
    protected void okPressed() {
        String who = id.getText();
        char[] typed = password.getTextChars();
        char[] chosen = pin.getTextChars();
        begun(Message.SIGN_OPENING.text(), Background.begun(Message.SIGN_OPENING.text(), () -> {
            desk.station().signIn(desk.ledger(), who, typed, chosen);
            desk.stationChanged();
        }));
    }

    @Override
    protected void setBusy(boolean busy) {
        super.setBusy(busy);
        List.of(id, password, pin).forEach(field -> field.setEnabled(!busy));
    }

    @Override
    protected void refused() {
        password.setText("");
        password.setFocus();
    }
}
