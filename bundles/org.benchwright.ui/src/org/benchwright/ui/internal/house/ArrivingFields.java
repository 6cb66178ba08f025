package org.benchwright.ui.internal.house;

import org.benchwright.present.Receiving;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** What is written down of a unit that comes in, as fields in three columns. */
record ArrivingFields(Text order, Text owner, Text unit, Combo plate, Button asTyped, Text complaint, Text damage, Text preserve, FilesField files) {

    /**
     * Makes the fields.
     *
     * @param fields has a grid of three columns
     * @param area   where files can be dropped
     * @param width  of a field, in pixels
     * @param said   what they show; its files are not added
     */
    static ArrivingFields in(Composite fields, Composite area, int width, Receiving.Arriving said) {
        Text order = text(fields, HouseMessage.ORDER, said.order(), width);
        Text owner = text(fields, HouseMessage.OWNER, said.owner(), width);
        Text unit = text(fields, HouseMessage.RECEIVE_UNIT, said.unit(), width);
        new Label(fields, SWT.NONE).setText(HouseMessage.RECEIVE_PLATE.text());
        Combo plate = new Combo(fields, SWT.READ_ONLY);
        Receiving.plateWords().forEach(plate::add);
        plate.setText(said.plate());
        Button asTyped = new Button(fields, SWT.CHECK);
        asTyped.setText(HouseMessage.RECEIVE_AS_TYPED.text());
        asTyped.setToolTipText(HouseMessage.RECEIVE_AS_TYPED_WHAT.text());
        asTyped.setSelection(said.asTyped());
        return new ArrivingFields(order, owner, unit, plate, asTyped, text(fields, HouseMessage.RECEIVE_COMPLAINT, said.complaint(), width),
                text(fields, HouseMessage.RECEIVE_DAMAGE, said.damage(), width), text(fields, HouseMessage.RECEIVE_PRESERVE, said.preserve(), width),
                new FilesField(fields, area));
    }

    /** A field with its label; texts of several lines keep them. */
    static Text text(Composite fields, HouseMessage label, String initial, int width) {
        new Label(fields, SWT.NONE).setText(label.text());
        boolean lines = initial.indexOf('\n') >= 0;
        Text text = new Text(fields, SWT.BORDER | (lines ? SWT.MULTI | SWT.V_SCROLL : SWT.SINGLE));
        text.setText(initial);
        GridDataFactory.fillDefaults().grab(true, lines).span(2, 1).hint(width, lines ? 3 * text.getLineHeight() : SWT.DEFAULT).applyTo(text);
        return text;
    }

    /**
     * What stands in the fields.
     *
     * @param number the unit's number as it was scanned or typed
     * @param typed  whether it is to be taken as it stands
     * @param again  whether it was scanned a second time
     * @param family the family, where it is known
     */
    Receiving.Arriving arriving(String number, boolean typed, boolean again, String family) {
        return new Receiving.Arriving(order.getText(), owner.getText(), number, plate.getText(), typed, again, family, complaint.getText(),
                damage.getText(), preserve.getText(), files.files());
    }
}
