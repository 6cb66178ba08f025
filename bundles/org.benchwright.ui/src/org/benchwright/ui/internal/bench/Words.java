package org.benchwright.ui.internal.bench;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts about rounds, people and hands at the bench. */
enum Words {
    ROUNDS_COLUMN_POSITION, ROUNDS_COLUMN_UNIT, ROUNDS_COLUMN_DUE, ROUNDS_NONE, ROUNDS_HOW, ROUNDS_LOOKED, ROUNDS_CARD, TAP_HOW,
    ROUNDS_COLUMN_LOOKED, ROUNDS_NO_POSITION, ROUNDS_MISSED, ROUNDS_NOW, ROUNDS_LATER, ROUNDS_KEEPS, ROUNDS_SCAN_FIRST, ROUNDS_AS_EXPECTED,
    ROUNDS_ON_CARD, ROUNDS_SCANNED, LOOKS_GO, NOTICE_MORE, FOOT_TITLE, FOOT_ASK, FOOT_REFUSED,
    ALL_SAFE_TITLE, ALL_SAFE_ASK, ALL_SAFE_FAILED, SIGN_IN_TITLE, SIGN_IN_WHAT, SIGN_IN_ID, SIGN_IN_PASSWORD, SIGN_IN_PIN, STATION_LOCKED, ASK_PASSWORD, ASK_PIN,
    NO_FILE_ASKED, FAULTS_CODE, FAULTS_BESIDE, FAULTS_MEANS, FAULTS_ROW;

    private static final String BUNDLE = "org.benchwright.ui.internal.bench.words";

    /** The text with its arguments put in. */
    String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), Words.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
