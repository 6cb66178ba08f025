package org.benchwright.ui.internal.look;

import java.util.List;

import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.present.ExpectedIndication;
import org.benchwright.present.ExpectedIndication.Alternatives;
import org.benchwright.present.ExpectedIndication.Shown;
import org.benchwright.ui.internal.Message;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;

/**
 * Draws expected indications: each lamp in its declared colour with its legend beside it and its pattern in words, flashing at its rate;
 * what comes later in a sequence stands to the right of what comes before.
 */
public final class IndicationPainter {

    private final GC gc;
    private final Fonts fonts;
    private final Palette palette;
    private final int unit;
    private final long nanos;

    /**
     * @param unit  height of a lamp in pixels
     * @param nanos the time by which lamps flash
     */
    public IndicationPainter(GC gc, Fonts fonts, Palette palette, int unit, long nanos) {
        this.gc = gc;
        this.fonts = fonts;
        this.palette = palette;
        this.unit = unit;
        this.nanos = nanos;
    }

    /** Height of one line of indications. */
    public int height() {
        return unit + unit / 4;
    }

    /** Draws an expected indication in one line; returns its right end. */
    public int paint(ExpectedIndication expected, int x, int y) {
        int at = x;
        List<Alternatives> sequence = expected.sequence();
        for (int i = 0; i < sequence.size(); i++) {
            at = i == 0 ? at : arrow(at, y);
            at = alternatives(sequence.get(i), at, y);
        }
        return at;
    }

    private int alternatives(Alternatives alternatives, int x, int y) {
        int at = x;
        for (int i = 0; i < alternatives.any().size(); i++) {
            at = i == 0 ? at : word(Message.CARD_OR.text(), at, y);
            at = shown(alternatives.any().get(i), at, y);
        }
        return at;
    }

    private int shown(Shown shown, int x, int y) {
        if (shown instanceof ExpectedIndication.Lamp lamp) {
            return lamp(lamp, x, y);
        } else if (shown instanceof ExpectedIndication.Display display) {
            return display(display, x, y);
        }
        ExpectedIndication.Mode mode = (ExpectedIndication.Mode) shown;
        int at = word(mode.words(), x, y);
        for (Shown part : mode.shows()) {
            at = shown(part, at, y);
        }
        return at;
    }

    private int lamp(ExpectedIndication.Lamp lamp, int x, int y) {
        boolean lit = Blink.lit(lamp.pattern(), nanos);
        gc.setAntialias(SWT.ON);
        gc.setBackground(lit ? lamp.colour().map(Palette::lit).orElse(palette.unlit()) : palette.unlit());
        gc.fillOval(x, y, unit, unit);
        gc.setForeground(palette.text());
        gc.setLineWidth(Math.max(2, unit / 16));
        gc.drawOval(x, y, unit, unit);
        if (lamp.pattern() instanceof LampPattern.Off) {
            gc.setForeground(Palette.onUnlit());
            gc.drawLine(x + unit / 4, y + unit * 3 / 4, x + unit * 3 / 4, y + unit / 4);
        }
        return legend(lamp, x + unit + unit / 4, y);
    }

    private int legend(ExpectedIndication.Lamp lamp, int x, int y) {
        gc.setForeground(palette.text());
        gc.setFont(fonts.of(unit / 2, true));
        gc.drawText(lamp.legend(), x, y - unit / 12, true);
        int width = gc.textExtent(lamp.legend()).x;
        gc.setFont(fonts.of(unit * 2 / 5, false));
        gc.drawText(lamp.words(), x, y + unit / 2, true);
        return x + Math.max(width, gc.textExtent(lamp.words()).x) + unit / 2;
    }

    private int display(ExpectedIndication.Display display, int x, int y) {
        gc.setFont(fonts.of(unit / 2, true));
        Point size = gc.textExtent(display.text());
        gc.setBackground(palette.unlit());
        gc.fillRoundRectangle(x, y, size.x + unit / 2, unit, unit / 5, unit / 5);
        gc.setForeground(Palette.lit(LampColour.WHITE));
        gc.drawText(display.text(), x + unit / 4, y + (unit - size.y) / 2, true);
        return word(display.title(), x + size.x + unit / 2 + unit / 4, y);
    }

    private int word(String text, int x, int y) {
        gc.setFont(fonts.of(unit / 2, false));
        gc.setForeground(palette.text());
        Point size = gc.textExtent(text);
        gc.drawText(text, x, y + (unit - size.y) / 2, true);
        return x + size.x + unit / 3;
    }

    private int arrow(int x, int y) {
        int middle = y + unit / 2;
        int end = x + unit / 2;
        gc.setForeground(palette.text());
        gc.setBackground(palette.text());
        gc.setLineWidth(Math.max(2, unit / 14));
        gc.drawLine(x, middle, end, middle);
        gc.fillPolygon(new int[] {end, middle - unit / 6, end + unit / 4, middle, end, middle + unit / 6});
        return word(Message.CARD_THEN.text(), end + unit / 3, y);
    }
}
