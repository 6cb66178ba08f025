package org.benchwright.ui.internal.house;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of this package that people read; looked up when they are shown. */
public enum HouseMessage {
    JOB, SCAN_HINT, RECEIVE, REPAIRED, CORRECT, CORRECT_TITLE, CORRECT_WHAT, CORRECT_FILES, CORRECT_BUTTON, CORRECT_BY, REPAIR_BY, GIVE_BACK, TEST, TAG, ALL, UNIT, STANDS, SINCE, ORDER, OWNER, RECEIPT, NONE, COUNT, STORY_NONE, STORY_PICK,
    NOTES, TAG_TITLE, TAG_CONTACT, TAG_WHAT, TAG_FILE, TAG_BROWSE, TAG_SHOW, TAG_OK, TAG_NO_CONTACT, TAG_NO_FILE, TAG_WRITTEN, TAG_NOT_WRITTEN,
    RECEIVE_TITLE, RECEIVE_WHAT, RECEIVE_UNIT, RECEIVE_PLATE, RECEIVE_AS_TYPED, RECEIVE_COMPLAINT, RECEIVE_DAMAGE, RECEIVE_PRESERVE,
    RECEIVE_FILES, RECEIVE_ADD_FILE, RECEIVE_DROP, RECEIVE_BY, RECEIVE_BUTTON, RECEIVE_DONE, RECEIVE_NOT, RECEIVE_CLOSE, RECEIVE_TWICE, RECEIVE_STORY, RECEIVE_FIRST,
    REPAIR_TITLE, REPAIR_WHAT, REPAIR_DONE, REPAIR_PARTS, REPAIR_PARTS_HINT, REPAIR_BUTTON, GIVE_BACK_TITLE, GIVE_BACK_WHY,
    ASSET, INSTRUMENT, DUE, CERTIFICATE, CUSTODY, SERIAL, RANGES, RANGES_EXAMPLE, RANGES_FOUND, ADD, CALIBRATED, CALIBRATED_ON, MOVED, RETIRE, REINSTATE, IMPORT,
    READ_AGAIN, REASON, NO_DAY, ABOUT, BENCH_SIGNS, INSTRUMENTS_NONE, INSTRUMENTS_COUNT, INSTRUMENT_PICK,
    PICTURE_OFFERED, CAMERA_TITLE, CAMERA_WHAT, CAMERA_FAILED;

    private static final String BUNDLE = "org.benchwright.ui.internal.house.messages";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for: texts, and numbers where the words depend on how many there are
     */
    public String text(Object... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), HouseMessage.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
