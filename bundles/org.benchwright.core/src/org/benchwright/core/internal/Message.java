package org.benchwright.core.internal;

import org.benchwright.core.Texts;

/**
 * The texts of this bundle that people read.
 *
 * <p>The text is looked up when it is shown, never when the class is loaded, so that the first locale does not win.
 * Arguments are texts, so that no default locale changes the look of a number.
 */
public enum Message {
    QUANTITY_EMPTY, QUANTITY_TOO_LONG, QUANTITY_NOT_A_NUMBER, QUANTITY_TWO_SEPARATORS, QUANTITY_GROUPED,
    QUANTITY_BARE_SEPARATOR, QUANTITY_POWER_OF_TEN, QUANTITY_UNIT_FOR_POINT, QUANTITY_OUT_OF_RANGE, QUANTITY_NO_UNIT, QUANTITY_UNKNOWN_UNIT, QUANTITY_UNKNOWN_UNIT_NEAR,
    QUANTITY_OTHER_DIMENSION, QUANTITY_EXAMPLE,
    UNIT_UNKNOWN, UNIT_OTHER_DIMENSION, UNIT_OFFSET_IN_SUM, UNIT_OFFSET_AROUND,
    LIMITS_NONE, LIMITS_BETWEEN, LIMITS_BETWEEN_UNITS, LIMITS_AT_LEAST, LIMITS_AT_MOST,
    DURATION_EMPTY, DURATION_TOO_LONG, DURATION_NOT_UNDERSTOOD, DURATION_CALENDAR, DURATION_ORDER,
    DURATION_TOO_FINE, DURATION_TOO_LARGE, DURATION_EXAMPLE,
    COLOUR_RED, COLOUR_YELLOW, COLOUR_GREEN, COLOUR_BLUE, COLOUR_WHITE, COLOUR_ORANGE,
    MEANING_DANGER, MEANING_WARNING, MEANING_SAFE, MEANING_MANDATORY, MEANING_NONE,
    MEANING_EMERGENCY, MEANING_ABNORMAL, MEANING_NORMAL, MEANING_FAULTY,
    SIGNAL_DANGER, SIGNAL_WARNING, SIGNAL_CAUTION, SIGNAL_NOTICE,
    ROLE_TECHNICIAN, ROLE_SECOND_PERSON, ROLE_SUPERVISOR, ROLE_ENGINEER, ROLE_AUDITOR, ROLE_ADMINISTRATOR, ROLE_WATCH, ROLE_BENCH,
    SERIAL_EMPTY, SERIAL_TOO_LONG, SERIAL_CONTROL, MASK_EMPTY, MASK_TOO_LONG, MASK_CONTROL,
    ACTOR_ID, DIGEST_FORM, PATTERN_UNKNOWN,

    POINT_NO_REGISTER;

    private static final Texts TEXTS = Texts.beside(Message.class, "messages");

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     * @return the text in the language of the machine, or in English where there is none
     */
    public String text(String... arguments) {
        return TEXTS.text(name(), (Object[]) arguments);
    }
}
