package org.benchwright.present.internal;

import org.benchwright.core.Texts;

/** The words in which a record says what soaks and measurements prove. */
enum EvidenceWords {
    SOAK_PROVED, SOAK_WATCHED, SOAK_ASSUMED, SOAK_CLAIM_HOLDS, SOAK_CLAIM_FAILS, SOAK_STOPPED, SOAK_STOPPED_AT_ONCE, SOAK_STOPPED_ASSUMED,
    SOAK_UNWITNESSED, SOAK_STOPPED_UNWITNESSED, SOAK_CUT_SHORT, SOAK_NOT_BEGUN, SOAK_OUTSIDE, SOAK_GOING, SOAK_REHEARSED, SOAK_REHEARSED_ONLY,
    SURE_PERCENT, SURE_MOST, SURE_LEAST, SURE_UNKNOWN, SURE_READINGS;

    private static final Texts TEXTS = Texts.beside(EvidenceWords.class, "evidence");

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    String text(String... arguments) {
        return TEXTS.text(name(), (Object[]) arguments);
    }
}
