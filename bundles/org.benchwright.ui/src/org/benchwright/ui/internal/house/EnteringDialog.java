package org.benchwright.ui.internal.house;

import org.benchwright.ui.internal.look.FieldsDialog;
import org.eclipse.swt.widgets.Shell;

/** Asks for something that is entered into the house's book, and stays until that is on record; what is wrong with it is told at the top. */
abstract class EnteringDialog extends FieldsDialog {

    private static final int COLUMNS = 3;

    private final House house;

    EnteringDialog(Shell parent, House house, HouseMessage title, String words, HouseMessage button) {
        super(parent, title.text(), words, COLUMNS, button.text());
        this.house = house;
    }

    /** Enters it, and tells what comes of it. */
    final <T> void enter(House.Work<T> work) {
        begun(words(), house.enter(work));
    }
}
