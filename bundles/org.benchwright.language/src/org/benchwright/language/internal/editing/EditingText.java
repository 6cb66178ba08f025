package org.benchwright.language.internal.editing;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** Words of hovers, contents and proposals. */
enum EditingText {
    HAZARDS, POINTS, INSTRUMENTS, PRECONDITIONS, PROCEDURE_LABEL, FAMILY_TITLE, FAMILY_LIKE, FAMILY_SUPPLY, PROCEDURE_TITLE, PROCEDURE_REVISION,
    PROCEDURE_APPLIES, LAMP_TITLE, LAMP_GROUP_TITLE, LAMP_MARKED, LAMP_COLOURS, SHOWN_IN_MODE, SHOWN_BY_FAULT, DISPLAY_TITLE,
    DISPLAY_WIDTH, MODE_TITLE, MODE_SHOWN, MODE_NOT_SHOWN, MODE_WATCHED, KEPT_TITLE, KEPT_BY, LOAD_TITLE, OPTION_TITLE, LOAD_REPLACES, FAULT_TITLE, FAULT_SHOWS, FAULT_MEANS,
    FAULT_OFTEN, FAULT_NEXT, HAZARD_TITLE, HAZARD_CAN, HAZARD_SO, INSTRUMENT_TITLE, INSTRUMENT_READS, INSTRUMENT_GIVES,
    INSTRUMENT_UNCERTAINTY, PRECONDITION_TITLE, STAGE_TITLE, STAGE_ON_DEMAND, SOAK_TITLE, SOAK_LASTS, STEP_TITLE, STEP_TAKES, MARK_TITLE,
    VALUE_TITLE, VALUE_LIMITS, COMPARISON_TITLE, CONDITION_TITLE, OF_FAMILY, USED_NOWHERE, USED_ONCE, USED_OFTEN,
    AMOUNT_IS, RENAME_NOTHING, RENAME_NO_NAME, RENAME_CLASH, RENAME_OTHER_MEANING, RENAME_UNKNOWN_TEXT;

    private static final String BUNDLE = "org.benchwright.language.internal.editing.words";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), EditingText.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
