package org.benchwright.ui.internal.look;

import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Display;

/** What is copied, to be pasted elsewhere. */
public final class Clipping {

    private Clipping() {
    }

    /** Puts words in the place of what was copied before. */
    public static void copy(Display display, String words) {
        Clipboard clipboard = new Clipboard(display);
        try {
            clipboard.setContents(new Object[] {words}, new Transfer[] {TextTransfer.getInstance()});
        } finally {
            clipboard.dispose();
        }
    }
}
