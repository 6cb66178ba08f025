package org.benchwright.engine.record;

import java.util.Arrays;
import java.util.Optional;

/** What becomes of a unit that does not conform: as in ISO 9000:2015, 3.12, and its return to the owner. */
public enum Disposition {
    USE_UNDER_CONCESSION("use under concession"),
    REWORK("rework"),
    REPAIR("repair"),
    REGRADE("regrade"),
    SCRAP("scrap"),
    /** It goes back as it is; none of ISO 9000's. */
    RETURN_TO_OWNER("return to owner");

    private final String word;

    Disposition(String word) {
        this.word = word;
    }

    /** The words that are shown and typed. */
    public String word() {
        return word;
    }

    /** The one with those words. */
    public static Optional<Disposition> find(String word) {
        return Arrays.stream(values()).filter(each -> each.word.equals(word)).findFirst();
    }
}
