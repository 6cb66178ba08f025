package org.benchwright.cli.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of this bundle that people read; looked up when they are shown. */
enum Message {
    HELP_ROOT, HELP_VERSION, HELP_HELP, HELP_CHECK, HELP_CHECK_PATH, HELP_FORMAT, HELP_FORMAT_PATH, HELP_FORMAT_CHECK, HELP_LSP,
    FORMAT_OTHER, FORMAT_NOT, FORMAT_NOT_WRITTEN, HELP_TEST, HELP_TEST_FILE, HELP_SERIAL, HELP_ANSWERS,
    HELP_LEDGER, HELP_REHEARSE, HELP_TECHNICIAN, HELP_STATION, HELP_TEST_STATUS, HELP_UNITS, HELP_VERIFY, HELP_VERIFY_LEDGER,
    SEE_HELP, NO_PATH, NO_SUCH_FILE, DEMO, NO_DEMO, CHECKED, NOT_ONE_PROCEDURE, TEST_OPENED, TEST_RESUMED, PROCEDURE_CHANGED,
    INPUT_BROKEN, ANSWERS_NEED_REHEARSAL, ANSWERS_UNREADABLE, ANSWERS_MALFORMED, ANSWERS_NOT_TEXT, ANSWERS_MISSING,
    ANSWERS_REFUSED, ANSWERS_UNUSED, TIME_REFUSED, ANSWERED, TIME_CAME, RECORDED, TIME_SKIPPED, TONE, CARD_EXPECTED,
    CARD_PRESERVED, HAZARD_CAN, HAZARD_SO, HAZARD_DEFERS, COUNT_LEFT, COUNT_DUE, COUNT_STATUS, KEY_CONTROL, FAULT_MEANS,
    FAULT_OFTEN, FAULT_NEXT, STRUCK, ENTRY_DROPPED, ASK_ABANDON, ASK_TAKE_UP, UNITS_NONE, HELP_KEPT, HELP_CHECKPOINT, HELP_OUT,
    HELP_PROVE, HELP_PROVE_TEST, HELP_SINCE, HELP_EVENT, HELP_WITH_EVENTS, PROVE_WHAT, KEPT_NOT_TEXT, KEPT_UNREADABLE, KEPT_COMPARED,
    OUT_REFUSED, WRITTEN, UNIT_LEFT, UNIT_NEXT_LOOK,
    UNIT_OVERDUE, UNIT_REHEARSAL, SIGNER, OPEN_TESTS, SOUND, NOT_SOUND, CRASHED, CRASHED_UNLOGGED;

    private static final String BUNDLE = "org.benchwright.cli.internal.messages";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for: texts, and numbers where the words depend on how many there are
     */
    String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), Message.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
