package org.benchwright.language.internal.fix;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** What fixes are called, and the texts that they write for the engineer to complete. */
enum FixText {
    REPLACE, SWAP, INSERT, REMOVE, ADD_TIME, ADD_HAZARD, ADD_OUTCOME, ADD_MAKE_SAFE, ADD_CONCLUSION, CLAIM_LESS, ISOLATE, RECORD_FIRST,
    ASK_RELEASE, BOUND, DECIDE_BOTH_WAYS, BE_REACHED, LONGER, ADD_ENTRY, ISOLATE_IN_STEP, ADD_ARGUMENT, ADD_MARK, MOVE_MARK, ASK_RELEASE_INSTEAD, ADD_STEP, NO_STRAP,
    TOO_CLOSE, WHY, NOT_CARRIED_OUT, OWNER_AGREES, NOT_SO_OFTEN, MAKE_SAFE, SWITCH_OFF, WHAT_WAS_SEEN, WHAT_TO_DO, RESTARTED, NOBODY_TOUCHES, BEGIN;

    private static final String BUNDLE = "org.benchwright.language.internal.fix.words";

    String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), FixText.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }

    /** As a text of the language. */
    String quoted() {
        return "\"" + text() + "\"";
    }
}
