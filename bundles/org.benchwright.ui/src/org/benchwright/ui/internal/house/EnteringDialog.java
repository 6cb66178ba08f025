package org.benchwright.ui.internal.house;

import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.swt.widgets.Shell;

/** Asks for something that is entered into the house's book, and stays until that is on record; what is wrong with it is told at the top. */
abstract class EnteringDialog extends FieldsDialog {

    private static final int COLUMNS = 3;

    private final House house;

    EnteringDialog(Shell parent, House house, HouseMessage title, String words, HouseMessage button) {
        super(parent, title.text(), words, COLUMNS, button.text());
        this.house = house;
    }

    /** Enters it, then closes; whoever closes the dialog meanwhile leaves nobody to tell, and what is entered is entered all the same. */
    final <T> void enter(House.Work<T> work) {
        getButton(IDialogConstants.OK_ID).setEnabled(false);
        Shell shell = getShell();
        house.enter(work).whenComplete((done, failure) -> OnDisplay.later(shell, () -> {
            if (failure == null) {
                finish();
            } else {
                setErrorMessage(Failures.words(failure));
                getButton(IDialogConstants.OK_ID).setEnabled(true);
            }
        }));
    }
}
