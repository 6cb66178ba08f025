package org.benchwright.ui.internal.bench;

import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.ui.internal.desk.Desk;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Somebody signs in at this station: initials, password, and the PIN that is good until it is locked. */
final class SignInDialog extends TitleAreaDialog {

    private final Desk desk;
    private final String offered;
    private Text id;
    private Text password;
    private Text pin;

    SignInDialog(Shell parent, Desk desk, String offered) {
        super(parent);
        this.desk = desk;
        this.offered = offered;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(Words.SIGN_IN_TITLE.text());
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        setTitle(Words.SIGN_IN_TITLE.text());
        setMessage(Words.SIGN_IN_WHAT.text());
        Composite fields = new Composite(area, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
        id = field(fields, Words.SIGN_IN_ID, SWT.NONE);
        id.setText(desk.station().person().orElse(offered));
        password = field(fields, Words.SIGN_IN_PASSWORD, SWT.PASSWORD);
        pin = field(fields, Words.SIGN_IN_PIN, SWT.PASSWORD);
        (id.getText().isEmpty() ? id : password).setFocus();
        return area;
    }

    private static Text field(Composite parent, Words label, int style) {
        new Label(parent, SWT.NONE).setText(label.text());
        Text text = new Text(parent, SWT.BORDER | SWT.SINGLE | style);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(text);
        return text;
    }

    /** The key opens slowly by intent, for a moment; nothing else can be done meanwhile. */
    @Override
    protected void okPressed() {
        try {
            desk.station().signIn(desk.ledger(), id.getText(), password.getTextChars(), pin.getTextChars());
            desk.stationChanged();
            super.okPressed();
        } catch (EntryRefusedException | CannotStoreException e) {
            password.setText("");
            setErrorMessage(e.getMessage());
            password.setFocus();
        }
    }
}
