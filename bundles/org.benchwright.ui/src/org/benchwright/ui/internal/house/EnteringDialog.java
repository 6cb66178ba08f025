package org.benchwright.ui.internal.house;

import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.OnDisplay;
import org.eclipse.jface.dialogs.IDialogConstants;
import org.eclipse.jface.dialogs.TitleAreaDialog;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;

/** Asks for something that is entered into the house's book, and stays until that is on record; what is wrong with it is told at the top. */
abstract class EnteringDialog extends TitleAreaDialog {

    private final House house;
    private final HouseMessage title;
    private final HouseMessage button;

    EnteringDialog(Shell parent, House house, HouseMessage title, HouseMessage button) {
        super(parent);
        this.house = house;
        this.title = title;
        this.button = button;
    }

    @Override
    protected void configureShell(Shell shell) {
        super.configureShell(shell);
        shell.setText(title.text());
    }

    @Override
    protected void createButtonsForButtonBar(Composite parent) {
        createButton(parent, IDialogConstants.OK_ID, button.text(), true);
        createButton(parent, IDialogConstants.CANCEL_ID, IDialogConstants.CANCEL_LABEL, false);
    }

    /** Enters it, then closes; whoever closes the dialog meanwhile leaves nobody to tell, and what is entered is entered all the same. */
    final <T> void enter(House.Work<T> work) {
        getButton(IDialogConstants.OK_ID).setEnabled(false);
        Shell shell = getShell();
        house.enter(work).whenComplete((done, failure) -> OnDisplay.later(shell, () -> {
            if (failure == null) {
                setReturnCode(OK);
                close();
            } else {
                setErrorMessage(Failures.words(failure));
                getButton(IDialogConstants.OK_ID).setEnabled(true);
            }
        }));
    }
}
