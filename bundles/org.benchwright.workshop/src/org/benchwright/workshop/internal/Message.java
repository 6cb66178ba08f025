package org.benchwright.workshop.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The texts of this bundle that people read; looked up when they are shown. */
public enum Message {
    FAULT_AFTER_SEAL, FAULT_NO_EVENTS, FAULT_NOT_OPENED, FAULT_UNDECODABLE, FAULT_PLAN_MISSING, FAULT_PLAN_DIGEST,
    FAULT_TEXT_MISSING, FAULT_PLAN_UNDECODABLE, FAULT_DOES_NOT_FOLLOW, FAULT_IMPOSSIBLE, FAULT_OF_KIND, FAULT_UNREADABLE,
    FAULT_SEALED_OPEN, OVERTAKEN, REFUSED_JUMPING_TIME, REFUSED_SEALED, REFUSED_SITTING_OVER, ATTACHMENT_UNREADABLE,
    ATTACHMENT_TOO_LARGE, ATTACHMENT_NO_FILE, RETURN_NO_TEST, RETURN_OPEN, FIGURES_CANCELLED,
    FIGURES_DERIVED,
    PEOPLE_UNKNOWN, PEOPLE_NO_KEY, PEOPLE_BEGUN, BOOK_OVERTAKEN, NOT_PREPARED, FAULT_NOBODY, FAULT_NOT_APPROVED, FAULT_OTHER_APPROVAL,
    FAULT_OTHER_SIGNER, FAULT_MEANING, SUPERSEDED_BY_NONE, RECORD_OPEN, NOT_TRUSTED, FAULT_PROJECTION, FAULT_MADE_UP,
    RECEIPTS_OVERTAKEN, REPAIR_REHEARSAL, REPAIR_OPEN, REPAIR_ACCEPTED, REPAIR_RETESTED, FAULT_OTHER_RECEIPT, FAULT_OTHER_REPAIR, FAULT_NO_EARLIER,
    FAULT_NOT_MENDABLE, FAULT_REPAIR_UNIT,
    SHARED_UNREADABLE, SHARED_PASSWORD_HERE, SHARED_UNKNOWN, SHARED_INCOMPLETE, SHARED_PASSWORD_OPEN, SHARED_NO_PASSWORD, SHARED_STATE,
    FAULT_OTHER_BOOKS, LATE_NOT_APPROVED, LATE_APPROVAL, LATE_ROLE;

    private static final String BUNDLE = "org.benchwright.workshop.internal.messages";

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     */
    public String text(String... arguments) {
        String pattern = ResourceBundle.getBundle(BUNDLE, Locale.getDefault(), Message.class.getClassLoader()).getString(name());
        return new MessageFormat(pattern, Locale.ROOT).format(arguments);
    }
}
