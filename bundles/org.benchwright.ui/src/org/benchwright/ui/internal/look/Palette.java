package org.benchwright.ui.internal.look;

import org.benchwright.core.LampColour;
import org.benchwright.core.SignalWord;
import org.eclipse.swt.graphics.Color;

/**
 * Colours of what is drawn. Signal words have the colours of ISO 3864-4 and ANSI Z535.1 (red, orange, yellow, blue; here by eye), the
 * same in both looks.
 *
 * @param ground  behind everything
 * @param text    what is read
 * @param quiet   what is beside the matter
 * @param urgent  a countdown, a refusal
 * @param good    what conforms
 * @param line    rules and frames
 * @param panel   behind something set apart
 * @param link    words that lead elsewhere
 */
public record Palette(Color ground, Color text, Color quiet, Color urgent, Color good, Color line, Color panel, Color link) {

    /** For a bright room. */
    public static final Palette LIGHT = new Palette(new Color(244, 245, 246), new Color(16, 20, 23), new Color(78, 88, 96),
            new Color(168, 32, 20), new Color(22, 101, 52), new Color(178, 186, 192), new Color(255, 255, 255), new Color(18, 82, 152));
    /** For a dim room. */
    public static final Palette DARK = new Palette(new Color(29, 34, 38), new Color(240, 243, 245), new Color(168, 178, 186),
            new Color(255, 138, 118), new Color(122, 214, 148), new Color(74, 84, 92), new Color(20, 24, 27), new Color(132, 186, 244));

    private static final Color BLACK = new Color(0, 0, 0);
    private static final Color WHITE = new Color(255, 255, 255);

    /** Behind a signal word. */
    public static Color ground(SignalWord word) {
        return switch (word) {
            case DANGER -> new Color(190, 22, 34);
            case WARNING -> new Color(240, 130, 20);
            case CAUTION -> new Color(248, 208, 30);
            case NOTICE -> new Color(20, 84, 150);
        };
    }

    /** A signal word on its ground. */
    public static Color text(SignalWord word) {
        return word == SignalWord.DANGER || word == SignalWord.NOTICE ? WHITE : BLACK;
    }

    /** A lamp that is lit. */
    public static Color lit(LampColour colour) {
        return switch (colour) {
            case RED -> new Color(236, 42, 32);
            case YELLOW -> new Color(255, 204, 20);
            case GREEN -> new Color(30, 196, 84);
            case BLUE -> new Color(44, 124, 246);
            case WHITE -> new Color(252, 252, 246);
        };
    }

    /** What is drawn on a lamp that is not lit. */
    public static Color onUnlit() {
        return new Color(190, 198, 204);
    }

    /** A lamp that is not lit. */
    public Color unlit() {
        return new Color(66, 72, 76);
    }
}
