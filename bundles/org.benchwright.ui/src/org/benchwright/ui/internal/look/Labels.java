package org.benchwright.ui.internal.look;

import org.eclipse.swt.widgets.Label;

/** What a label, a box or a hint says, letter by letter: nothing in it is a key to press. */
public final class Labels {

    private Labels() {
    }

    /**
     * Leaves a label alone that says it already: a label that is told anything is measured and drawn anew.
     *
     * @return true if it said something else
     */
    public static boolean say(Label label, String words) {
        String told = letters(words);
        boolean other = !told.equals(label.getText());
        if (other) {
            label.setText(told);
        }
        return other;
    }

    /** What a label says, as it is read. */
    public static String said(Label label) {
        return label.getText().replace("&&", "&");
    }

    /** Words as a label, a box or a hint has to be given them, to show each letter of them. */
    public static String letters(String words) {
        return words.replace("&", "&&");
    }
}
