package org.benchwright.ui.internal.look;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;

/** Buttons with words on them, that do something as soon as they are pressed. */
public final class Buttons {

    private Buttons() {
    }

    /** A button to be pressed; an ampersand in its words marks the key that presses it. */
    public static Button push(Composite parent, String words, Runnable pressed) {
        return button(parent, SWT.PUSH, words, pressed);
    }

    /** A box to be ticked. */
    public static Button check(Composite parent, String words, Runnable changed) {
        return button(parent, SWT.CHECK, words, changed);
    }

    private static Button button(Composite parent, int style, String words, Runnable pressed) {
        Button button = new Button(parent, style);
        button.setText(words);
        button.addListener(SWT.Selection, event -> pressed.run());
        return button;
    }
}
