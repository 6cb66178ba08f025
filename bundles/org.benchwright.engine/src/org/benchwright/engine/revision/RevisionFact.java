package org.benchwright.engine.revision;

import java.math.BigDecimal;

import org.benchwright.core.Digest;

/** Something that somebody signs about a revision of a procedure, or about how many of the tests are reviewed. */
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

    /**
     * From now on tests are drawn for a review by this plan; it takes the place of the one before. Tests that were opened earlier stay what they are.
     *
     * @param lot     for how many tests the sample was looked up
     * @param quality acceptable quality level in percent
     * @param sample  what the tables give for them
     * @param reason  why it is planned so
     */
    record ReviewsPlanned(int lot, BigDecimal quality, int sample, String reason) implements RevisionFact {
    }

    /** From now on no test is drawn for a review. */
    record ReviewsEnded(String reason) implements RevisionFact {
    }
}
