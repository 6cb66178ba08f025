package org.benchwright.ui.internal.house;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.present.ReceivedRow;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks for what goes on a unit's tag besides what is known, and where the tag is put. */
final class TagDialog extends FieldsDialog {

    private static final int FIELD_WIDTH = 420;

    private final ReceivedRow row;
    private final String offered;
    private Text contactField;
    private Text fileField;
    private Button showBox;
    private String contact = "";
    private Path file = Path.of("");
    private boolean show;

    TagDialog(Shell parent, ReceivedRow row, String offered) {
        super(parent, HouseMessage.TAG_TITLE.text(row.unit()), HouseMessage.TAG_WHAT.text(), 3, HouseMessage.TAG_OK.text());
        this.row = row;
        this.offered = offered;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        contactField = field(fields, HouseMessage.TAG_CONTACT, offered, 2);
        fileField = field(fields, HouseMessage.TAG_FILE, Path.of(System.getProperty("user.home"), "tag-" + row.receipt() + ".pdf").toString(), 1);
        Buttons.push(fields, HouseMessage.TAG_BROWSE.text(), this::browse);
        new Label(fields, SWT.NONE);
        showBox = new Button(fields, SWT.CHECK);
        showBox.setText(HouseMessage.TAG_SHOW.text());
        showBox.setSelection(true);
        GridDataFactory.fillDefaults().span(2, 1).applyTo(showBox);
        contactField.setFocus();
    }

    private static Text field(Composite fields, HouseMessage label, String initial, int columns) {
        new Label(fields, SWT.NONE).setText(label.text());
        Text text = new Text(fields, SWT.BORDER | SWT.SINGLE);
        text.setText(initial);
        GridDataFactory.fillDefaults().grab(true, false).span(columns, 1).hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(text);
        return text;
    }

    private void browse() {
        FileDialog dialog = new FileDialog(getShell(), SWT.SAVE);
        dialog.setFileName(fileField.getText());
        dialog.setOverwrite(true);
        Optional.ofNullable(dialog.open()).ifPresent(fileField::setText);
    }

    @Override
    protected void okPressed() {
        try {
            contact = contactField.getText().strip();
            file = Path.of(fileField.getText().strip()).toAbsolutePath();
            show = showBox.getSelection();
        } catch (InvalidPathException e) {
            setErrorMessage(HouseMessage.TAG_NO_FILE.text());
            return;
        }
        if (contact.isEmpty()) {
            setErrorMessage(HouseMessage.TAG_NO_CONTACT.text());
            contactField.setFocus();
        } else if (fileField.getText().isBlank()) {
            setErrorMessage(HouseMessage.TAG_NO_FILE.text());
            fileField.setFocus();
        } else {
            super.okPressed();
        }
    }

    /** Whom to ask about the unit. */
    String contact() {
        return contact;
    }

    /** Where the tag is put. */
    Path file() {
        return file;
    }

    /** Shows the tag in what this machine shows such files with, which prints it; does nothing if that was not wanted. */
    void show() {
        if (show) {
            Program.launch(file.toString());
        }
    }
}
