package org.benchwright.present.internal;

import org.benchwright.core.Texts;

/** The texts about who works at the bench, at which unit, and what hands do there. */
public enum Hands {
    REFUSED_ONE_KEY, WORST_SO_FAR, COLUMN_ENDED, COLUMN_QUESTIONED, COLUMN_STOPPED, COLUMN_GAP, COLUMN_BEGINS_EMPTY, COLUMN_BLOCK,
    BENCH_PROVED, BENCH_OWED, HAZARD_KNOWN, TAKEN_OVER, IDENTIFIED, PLACED, TAPPED, QUESTIONED, ASK_QUESTIONED, ASK_QUESTIONED_BLIND, HOW_QUESTIONED,
    ASK_BLIND, HIDDEN, ASK_SCAN, HOW_SCAN, HOW_SEEN_TAP, REFUSED_TAPS, KEY_PLACE, KEY_OVER, MADE_SAFE_BEGUN, MADE_SAFE_ALREADY,
    AUTHORISED, AUTHORISED_ENDED, REFUSED_DAY, MADE_SAFE_FAILED,
    LOOK_COMING, LOOK_DUE, LOOK_MISSED, LOOKS;

    private static final Texts TEXTS = Texts.beside(Hands.class, "hands");

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    public String text(Object... arguments) {
        return TEXTS.text(name(), arguments);
    }
}
