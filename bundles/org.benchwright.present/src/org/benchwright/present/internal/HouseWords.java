package org.benchwright.present.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts about units in the house and instruments; looked up when they are shown. */
public enum HouseWords {
    WAITING, ON_TEST, ON_SOAK, ACCEPTED, REJECTED, UNDECIDED, NOT_VALID, REPAIRED, HANDED_OVER, GIVEN_BACK, CAME_AGAIN,
    NO_UNIT, UNLIKE, IN_HOUSE, PLATE_UNKNOWN, TAG_NEEDED, NO_RECEIPT, NO_FAMILY, RECEIVED, RECEIVED_ORDER, RECEIVED_OWNER, SAID_COMPLAINT,
    SAID_DAMAGE, SAID_PRESERVE, SAID_PLATE, SAID_FILES, STORY_TEST, STORY_REHEARSAL, STORY_OPEN, STORY_RETURNED, STORY_NOT_VALID, STORY_REPAIRED, STORY_LEFT, PART_LOT,
    TOLD_RECEIVED, TOLD_REPAIRED, NOT_ON_TEST, INSTRUMENT_BY_HAND, TOLD_REGISTER, TOLD_REGISTER_CERTIFICATE, TOLD_BY_HAND,
    INSTRUMENT_RETIRED, INSTRUMENT_LATE, INSTRUMENT_NEVER, INSTRUMENT_GOOD, RANGE_UNREAD, IMPORT_HEADINGS, IMPORT_CELLS, IMPORT_LINE, IMPORT_FORMULA, IMPORT_NO_DAY,
    IMPORT_STOPPED,
    HOURS_TROUBLE, HOURS_LINE, HOURS_LARGE, HOURS_NO_TEXT, SOAK_ENDS, SOAK_ALL_IN, SOAK_NOBODY, SOAK_NO_BETTER, SOAK_BETTER, SOAK_LESS_BAD, LOOK_NOBODY,
    TAG_NOT_HERE, TAG_ORDER, TAG_SINCE, TAG_SOAK, TAG_TEST, TAG_CUT_OFF, TAG_CONTACT, TAG_WAITING, TAG_NOT_VALID, TAG_REPAIRED,
    FAULT_NOTE, FAULT_NOTE_NEXT, FAULT_NOT_IN_NOTES, FAULTS_NONE, FAULTS_SAY, FAULT_CODE, FAULT_FAMILY, FAULT_NOTES, FAULT_TESTS, FAULT_FIRST, FAULT_LAST, FAULT_WHERE, FAULT_TOLD, FAULT_NOT_TOLD;

    private static final String BUNDLE = "org.benchwright.present.internal.house";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    public String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), HouseWords.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
