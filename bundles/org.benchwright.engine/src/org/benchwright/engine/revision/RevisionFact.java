package org.benchwright.engine.revision;

import org.benchwright.core.Digest;

/** Something that somebody signs about a revision of a procedure. */
public sealed interface RevisionFact {

    /**
     * An engineer says that this text and plan are ready to be approved. A preparation that was not approved yet gives way to it.
     *
     * @param procedure the procedure's name with that of the family it was compiled for, see {@link Revision#key}
     * @param title     what people call it
     * @param revision  its revision
     * @param text      digest of the text with all that it refers to
     * @param plan      digest of the plan compiled from it
     */
    record Prepared(String procedure, String title, int revision, Digest text, Digest plan) implements RevisionFact {
    }

    /**
     * A second person approves what was prepared; text and plan of that revision never change any more.
     *
     * @param prepared number of the event that prepared it
     * @param text     digest of the text that was looked at
     * @param plan     digest of the plan compiled from it
     */
    record Approved(long prepared, Digest text, Digest plan) implements RevisionFact {
    }

    /**
     * A preparation or an approval does not hold any more. Tests that were opened by it stay what they are.
     *
     * @param event  number of the event that prepared or approved
     * @param reason why
     */
    record Withdrawn(long event, String reason) implements RevisionFact {
    }
}
