package org.benchwright.ledger;

import java.util.Set;

/** The few kinds of event that the ledger itself knows; all others are names to it. */
public final class EventKinds {

    /** The last event of the work on a test; from here on only {@link #AFTER_SEAL} may follow. */
    public static final String SEALED = "sealed";

    /** The unit was given to its owner. */
    public static final String HANDED_OVER = "handed-over";

    /** The unit came back from where it had been handed over to. */
    public static final String RETURNED = "returned";

    /** The bytes of an attachment were taken away; its digest stays. */
    public static final String ATTACHMENT_WITHDRAWN = "attachment-withdrawn";

    /** What may follow a seal, each signed itself. */
    public static final Set<String> AFTER_SEAL = Set.of("amended", "departure-decided", "nonconformity-decided", "reviewed", HANDED_OVER, RETURNED,
            "recalled", "superseded", "voided", ATTACHMENT_WITHDRAWN);

    private static final int LONGEST = 40;

    private EventKinds() {
    }

    /** Whether {@code kind} can name an event: small letters, digits and dashes, at most 40 of them, a letter first. */
    public static boolean isKind(String kind) {
        if (kind.isEmpty() || kind.length() > LONGEST || !isLetter(kind.charAt(0))) {
            return false;
        }
        for (int i = 1; i < kind.length(); i++) {
            char unit = kind.charAt(i);
            if (!isLetter(unit) && (unit < '0' || unit > '9') && unit != '-') {
                return false;
            }
        }
        return true;
    }

    private static boolean isLetter(char unit) {
        return unit >= 'a' && unit <= 'z';
    }
}
