package org.benchwright.language.internal.fix;

import org.benchwright.core.Texts;

/** What fixes are called, and the texts that they write for the engineer to complete. */
enum FixText {
    REPLACE, SWAP, INSERT, REMOVE, ADD_TIME, ADD_HAZARD, ADD_OUTCOME, ADD_MAKE_SAFE, ADD_CONCLUSION, CLAIM_LESS, ISOLATE, RECORD_FIRST,
    ASK_RELEASE, BOUND, DECIDE_BOTH_WAYS, BE_REACHED, LONGER, ADD_ENTRY, ISOLATE_IN_STEP, ADD_ARGUMENT, ADD_MARK, MOVE_MARK,
    ASK_RELEASE_INSTEAD, ADD_STEP, NO_STRAP,
    TOO_CLOSE, WHY, NOT_CARRIED_OUT, OWNER_AGREES, NOT_SO_OFTEN, MAKE_SAFE, SWITCH_OFF, WHAT_WAS_SEEN, WHAT_TO_DO, RESTARTED, NOBODY_TOUCHES, BEGIN;

    private static final Texts TEXTS = Texts.beside(FixText.class, "words");

    String text(String... arguments) {
        return TEXTS.text(name(), (Object[]) arguments);
    }

    /** As a text of the language. */
    String quoted() {
        return "\"" + text() + "\"";
    }
}
