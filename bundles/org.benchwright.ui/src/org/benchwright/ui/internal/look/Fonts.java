package org.benchwright.ui.internal.look;

import java.util.HashMap;
import java.util.Map;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.widgets.Display;

/** The system's font in sizes given in pixels; each made once. Used by the display's thread. */
public final class Fonts {

    private static final double POINTS_PER_INCH = 72;

    private final Display display;
    private final Map<String, Font> made = new HashMap<>();

    /** @param display the display */
    public Fonts(Display display) {
        this.display = display;
    }

    /**
     * A font of the system's family.
     *
     * @param pixels height of its em square in pixels, at least 8
     */
    public Font of(int pixels, boolean bold) {
        return made.computeIfAbsent(pixels + (bold ? "b" : ""), key -> {
            FontData data = display.getSystemFont().getFontData()[0];
            int points = (int) Math.ceil(Math.max(8, pixels) * POINTS_PER_INCH / display.getDPI().y);
            return new Font(display, data.getName(), points, bold ? SWT.BOLD : SWT.NORMAL);
        });
    }

    /** Gives all fonts back. */
    public void dispose() {
        made.values().forEach(Font::dispose);
        made.clear();
    }
}
