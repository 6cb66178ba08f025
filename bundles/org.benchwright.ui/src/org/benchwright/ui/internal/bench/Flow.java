package org.benchwright.ui.internal.bench;

import org.benchwright.ui.internal.look.Fonts;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.TextLayout;

/** Text and shapes one below the other, drawn or only measured. */
final class Flow {

    /** Sizes are given for a window of this many pixels and scaled with it. */
    private static final double WIDTH = 1920;
    private static final double HEIGHT = 1080;
    private static final double SMALLEST = 0.4;

    private final GC gc;
    private final Fonts fonts;
    private final double scale;
    private final boolean drawing;
    private final int left;
    private final int right;
    private int y;

    /**
     * @param scale   see {@link #scale}
     * @param drawing false: only measured
     * @param y       where it begins
     */
    Flow(GC gc, Fonts fonts, double scale, boolean drawing, int left, int right, int y) {
        this.gc = gc;
        this.fonts = fonts;
        this.scale = scale;
        this.drawing = drawing;
        this.left = left;
        this.right = Math.max(left + 40, right);
        this.y = y;
    }

    /** How much larger than at 1920 x 1080 everything is in a window of this size. */
    static double scale(int width, int height) {
        return Math.max(SMALLEST, Math.min(width / WIDTH, height / HEIGHT));
    }

    int scaled(int pixels) {
        return (int) Math.round(pixels * scale);
    }

    int y() {
        return y;
    }

    int left() {
        return left;
    }

    int right() {
        return right;
    }

    boolean drawing() {
        return drawing;
    }

    GC gc() {
        return gc;
    }

    void gap(int pixels) {
        y += scaled(pixels);
    }

    /** Something of that height, drawn by others. */
    void skip(int pixels) {
        y += pixels;
    }

    /** Text, wrapped. */
    void text(String text, int pixels, boolean bold, Color colour) {
        text(text, pixels, bold, colour, 0);
    }

    /** Text, wrapped and indented by unscaled pixels. */
    void text(String text, int pixels, boolean bold, Color colour, int indent) {
        if (text.isBlank()) {
            return;
        }
        TextLayout layout = new TextLayout(gc.getDevice());
        try {
            layout.setText(kept(text));
            layout.setFont(fonts.of(scaled(pixels), bold));
            layout.setWidth(Math.max(20, right - left - indent));
            if (drawing) {
                gc.setForeground(colour);
                layout.draw(gc, left + indent, y);
            }
            y += layout.getBounds().height;
        } finally {
            layout.dispose();
        }
    }

    /** A number is not parted from its unit, nor a limit from the other, by the end of a line. */
    static String kept(String text) {
        return text.replaceAll("(?<=\\d) (?=\\p{L}{1,5}\\b|\\.\\. )", "\u00A0").replaceAll("(?<=\\u00A0\\.\\.) ", "\u00A0");
    }

    /** Text on a ground of its own over the whole width. */
    void band(String text, int pixels, Color ground, Color colour) {
        int padding = scaled(14);
        int top = y;
        Flow measured = new Flow(gc, fonts, scale, false, left + padding, right - padding, y + padding / 2);
        measured.text(text, pixels, true, colour);
        int height = measured.y() + padding / 2 - top;
        if (drawing) {
            gc.setBackground(ground);
            gc.fillRectangle(left, top, right - left, height);
            new Flow(gc, fonts, scale, true, left + padding, right - padding, top + padding / 2).text(text, pixels, true, colour);
        }
        y = top + height;
    }

    /** A frame from {@code top} down to here. */
    void frame(int top, Color colour, int width) {
        if (drawing) {
            gc.setForeground(colour);
            gc.setLineWidth(width);
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.drawRectangle(left, top, right - left, y - top);
        }
    }

    /** The same flow between other margins. */
    Flow within(int inset) {
        return new Flow(gc, fonts, scale, drawing, left + scaled(inset), right - scaled(inset), y);
    }
}
