package org.benchwright.ui.internal.house;

import java.util.List;

import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.internal.app.Settings;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Asks what was replaced or mended, and stays until that is on record. */
final class RepairDialog extends EnteringDialog {

    private final Settings settings;
    private final ReceivedRow row;
    private Text what;
    private Text parts;
    private FilesField files;
    private Text by;

    RepairDialog(Shell parent, House house, Settings settings, ReceivedRow row) {
        super(parent, house, HouseMessage.REPAIR_TITLE, HouseMessage.REPAIR_WHAT.text(row.unit(), row.test().orElse("")), HouseMessage.REPAIR_BUTTON);
        this.settings = settings;
        this.row = row;
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        what = text(fields, HouseMessage.REPAIR_DONE, SWT.SINGLE);
        parts = text(fields, HouseMessage.REPAIR_PARTS, SWT.MULTI | SWT.V_SCROLL);
        parts.setToolTipText(HouseMessage.REPAIR_PARTS_HINT.text());
        GridDataFactory.fillDefaults().grab(true, true).span(2, 1).hint(420, 5 * parts.getLineHeight()).applyTo(parts);
        new Label(fields, SWT.NONE);
        Label hint = new Label(fields, SWT.NONE);
        hint.setText(HouseMessage.REPAIR_PARTS_HINT.text());
        GridDataFactory.fillDefaults().span(2, 1).applyTo(hint);
        files = new FilesField(fields, area);
        by = text(fields, HouseMessage.REPAIR_BY, SWT.SINGLE);
        by.setText(settings.technician());
        what.setFocus();
    }

    private static Text text(Composite parent, HouseMessage label, int style) {
        new Label(parent, SWT.NONE).setText(label.text());
        Text text = new Text(parent, SWT.BORDER | style);
        GridDataFactory.fillDefaults().grab(true, false).span(2, 1).hint(420, SWT.DEFAULT).applyTo(text);
        return text;
    }

    @Override
    protected void okPressed() {
        Receiving.Mending mending = new Receiving.Mending(what.getText(), List.of(parts.getText().split("\\R")), files.files());
        String initials = by.getText();
        String test = row.test().orElse(row.unit());
        enter(receiving -> receiving.repaired(test, mending, initials));
    }
}
