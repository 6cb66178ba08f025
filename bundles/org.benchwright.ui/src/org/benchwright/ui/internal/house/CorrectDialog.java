package org.benchwright.ui.internal.house;

import java.nio.file.Path;
import java.util.List;

import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.ui.internal.app.Settings;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;

/** Says anew how a unit came in, or adds photos and papers; stays until that is on record. What was said before stays readable in the ledger. */
final class CorrectDialog extends EnteringDialog {

    private static final int WIDTH = 420;

    private final Settings settings;
    private final ReceivedRow row;
    private final Receiving.Arriving said;
    private final List<Path> more;
    private ArrivingFields arriving;
    private Text reason;
    private Text by;

    /**
     * @param row  the receipt
     * @param said what it says now
     * @param more files to be added to it
     */
    CorrectDialog(Shell parent, House house, Settings settings, ReceivedRow row, Receiving.Arriving said, List<Path> more) {
        super(parent, house, HouseMessage.CORRECT_TITLE, HouseMessage.CORRECT_WHAT.text(row.receipt()), HouseMessage.CORRECT_BUTTON);
        this.settings = settings;
        this.row = row;
        this.said = said;
        this.more = List.copyOf(more);
    }

    @Override
    protected void addFields(Composite fields, Composite area) {
        GridLayoutFactory.createFrom((GridLayout) fields.getLayout()).spacing(10, 8).applyTo(fields);
        arriving = ArrivingFields.in(fields, area, WIDTH, said);
        arriving.files().add(more);
        reason = ArrivingFields.text(fields, HouseMessage.REASON, more.isEmpty() ? "" : HouseMessage.CORRECT_FILES.text(), WIDTH);
        by = ArrivingFields.text(fields, HouseMessage.CORRECT_BY, settings.technician(), WIDTH);
        (more.isEmpty() ? arriving.order() : reason).setFocus();
    }

    @Override
    protected void okPressed() {
        String unit = arriving.unit().getText();
        Receiving.Arriving to = arriving.arriving(unit, arriving.asTyped().getSelection(), false,
                unit.strip().equals(said.unit()) ? said.family() : "");
        String why = reason.getText();
        String initials = by.getText();
        enter(receiving -> {
            receiving.correct(row.receipt(), why, to, initials);
            return row;
        });
    }
}
