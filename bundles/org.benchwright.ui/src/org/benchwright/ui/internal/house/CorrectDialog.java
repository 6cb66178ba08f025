package org.benchwright.ui.internal.house;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.internal.app.Settings;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Says anew how a unit came in, or adds photos and papers; stays until that is on record. What was said before stays readable in the ledger. */
final class CorrectDialog extends EnteringDialog {

    private final Settings settings;
    private final ReceivedRow row;
    private final Receiving.Arriving said;
    private final List<Path> more;
    private Text order;
    private Text owner;
    private Text unit;
    private Combo plate;
    private Button asTyped;
    private Text complaint;
    private Text damage;
    private Text preserve;
    private FilesField files;
    private Text reason;
    private Text by;

    /**
     * @param row  the receipt
     * @param said what it says now
     * @param more files to be added to it
     */
    CorrectDialog(Shell parent, House house, Settings settings, ReceivedRow row, Receiving.Arriving said, List<Path> more) {
        super(parent, house, HouseMessage.CORRECT_TITLE, HouseMessage.CORRECT_BUTTON);
        this.settings = settings;
        this.row = row;
        this.said = said;
        this.more = List.copyOf(more);
    }

    @Override
    protected boolean isResizable() {
        return true;
    }

    @Override
    protected Control createDialogArea(Composite parent) {
        Composite area = (Composite) super.createDialogArea(parent);
        setTitle(HouseMessage.CORRECT_TITLE.text());
        setMessage(HouseMessage.CORRECT_WHAT.text(row.receipt()));
        Composite fields = new Composite(area, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(3).margins(12, 12).spacing(10, 8).applyTo(fields);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(fields);
        order = text(fields, HouseMessage.ORDER, said.order());
        owner = text(fields, HouseMessage.OWNER, said.owner());
        unit = text(fields, HouseMessage.RECEIVE_UNIT, said.unit());
        new Label(fields, SWT.NONE).setText(HouseMessage.RECEIVE_PLATE.text());
        plate = new Combo(fields, SWT.READ_ONLY);
        Receiving.plateWords().forEach(plate::add);
        plate.setText(said.plate());
        asTyped = new Button(fields, SWT.CHECK);
        asTyped.setText(HouseMessage.RECEIVE_AS_TYPED.text());
        asTyped.setSelection(said.asTyped());
        complaint = text(fields, HouseMessage.RECEIVE_COMPLAINT, said.complaint());
        damage = text(fields, HouseMessage.RECEIVE_DAMAGE, said.damage());
        preserve = text(fields, HouseMessage.RECEIVE_PRESERVE, said.preserve());
        files = new FilesField(fields, area);
        files.add(more);
        reason = text(fields, HouseMessage.REASON, more.isEmpty() ? "" : HouseMessage.CORRECT_FILES.text());
        by = text(fields, HouseMessage.CORRECT_BY, settings.technician());
        (more.isEmpty() ? order : reason).setFocus();
        return area;
    }

    /** Texts of several lines keep them. */
    private static Text text(Composite parent, HouseMessage label, String initial) {
        new Label(parent, SWT.NONE).setText(label.text());
        boolean lines = initial.indexOf('\n') >= 0;
        Text text = new Text(parent, SWT.BORDER | (lines ? SWT.MULTI | SWT.V_SCROLL : SWT.SINGLE));
        text.setText(initial);
        GridDataFactory.fillDefaults().grab(true, lines).span(2, 1).hint(420, lines ? 3 * text.getLineHeight() : SWT.DEFAULT).applyTo(text);
        return text;
    }

    @Override
    protected void okPressed() {
        Receiving.Arriving to = new Receiving.Arriving(order.getText(), owner.getText(), unit.getText(), plate.getText(), asTyped.getSelection(), false,
                unit.getText().strip().equals(said.unit()) ? said.family() : "", complaint.getText(), damage.getText(), preserve.getText(), files.files());
        String why = reason.getText();
        String initials = by.getText();
        enter(receiving -> {
            receiving.correct(row.receipt(), why, to, initials);
            return row;
        });
    }
}
