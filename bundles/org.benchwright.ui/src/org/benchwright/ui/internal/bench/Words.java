package org.benchwright.ui.internal.bench;

import org.benchwright.core.Texts;

/** The texts about rounds, people and hands at the bench. */
enum Words {
    ROUNDS_COLUMN_POSITION, ROUNDS_COLUMN_UNIT, ROUNDS_COLUMN_DUE, ROUNDS_NONE, ROUNDS_HOW, ROUNDS_LOOKED, ROUNDS_CARD, TAP_HOW,
    ROUNDS_COLUMN_LOOKED, ROUNDS_NO_POSITION, ROUNDS_MISSED, ROUNDS_NOW, ROUNDS_LATER, ROUNDS_KEEPS, ROUNDS_SCAN_FIRST, ROUNDS_AS_EXPECTED,
    ROUNDS_ON_CARD, ROUNDS_SCANNED, LOOKS_GO, NOTICE_MORE, FOOT_TITLE, FOOT_ASK, FOOT_REFUSED, ALL_SAFE_TITLE, ALL_SAFE_ASK, ALL_SAFE_FAILED,
    SIGN_IN_TITLE, SIGN_IN_WHAT, SIGN_IN_ID, SIGN_IN_PASSWORD, SIGN_IN_PIN, STATION_LOCKED, ASK_PASSWORD, ASK_PIN, NO_FILE_ASKED, FAULTS_CODE,
    FAULTS_BESIDE, FAULTS_MEANS, FAULTS_ROW;

    private static final Texts TEXTS = Texts.beside(Words.class, "words");

    /** The text with its arguments put in. */
    String text(Object... arguments) {
        return TEXTS.text(name(), arguments);
    }
}
