package org.benchwright.ui.internal.bench;

/** Sizes of the step card's text and drawings: em heights in pixels in a window of 1920 x 1080, scaled with the window. */
public final class CardSizes {

    /** Instruction and countdown: the capitals of the usual sans-serif fonts, 0.70 to 0.73 em, are at least 60 high. */
    public static final int LARGE = 87;

    static final int PLACE = 30;
    static final int UNIT = 24;
    static final int HAZARD_WORD = 60;
    static final int HAZARD_TEXT = 38;
    static final int LAMP = 52;
    static final int NEWS = 28;
    static final int QUESTION = 40;

    private CardSizes() {
    }
}
