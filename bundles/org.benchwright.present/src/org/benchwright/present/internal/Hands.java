package org.benchwright.present.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts about who works at the bench, at which unit, and what hands do there. */
public enum Hands {
    REFUSED_ONE_KEY, WORST_SO_FAR, COLUMN_ENDED, COLUMN_STOPPED,
    BENCH_PROVED, BENCH_OWED, HAZARD_KNOWN, TAKEN_OVER, IDENTIFIED, PLACED, TAPPED, QUESTIONED, ASK_QUESTIONED, ASK_QUESTIONED_BLIND, HOW_QUESTIONED,
    ASK_BLIND, HIDDEN, ASK_SCAN, HOW_SCAN, HOW_SEEN_TAP, REFUSED_TAPS, KEY_PLACE, KEY_OVER, MADE_SAFE_BEGUN, MADE_SAFE_ALREADY,
    AUTHORISED, AUTHORISED_ENDED, REFUSED_DAY, MADE_SAFE_FAILED,
    LOOK_COMING, LOOK_DUE, LOOK_MISSED, LOOKS;

    private static final String BUNDLE = "org.benchwright.present.internal.hands";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    public String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), Hands.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
