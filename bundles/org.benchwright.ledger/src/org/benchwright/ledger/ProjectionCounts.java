package org.benchwright.ledger;

import java.time.Instant;

import org.benchwright.ledger.ProjectedTest.State;

/** Counts out of a projection. */
public final class ProjectionCounts {

    private ProjectionCounts() {
    }

    /**
     * Tests that are alike in all of this.
     *
     * @param technician who opened them
     * @param station    where
     * @param state      how they stand
     * @param first      whether they are the first of their units
     * @param count      how many
     */
    public record Tests(String technician, String station, State state, boolean first, long count) {
    }

    /**
     * Something found.
     *
     * @param cause what
     * @param tests in how many tests
     */
    public record Found(ProjectedTest.Cause cause, long tests) {
    }

    /**
     * Soaks that ended alike.
     *
     * @param soak  how
     * @param count how many
     */
    public record Soaks(ProjectedTest.Soak soak, long count) {
    }

    /**
     * Units that were out there alike.
     *
     * @param procedure   by which procedure they were accepted
     * @param days        for how many days, 0 or more; all beyond the most asked for are one
     * @param returned    whether they came back then
     * @param testedAgain whether they were tested again then without having come back on record
     * @param fault       what was found when they came back, as in {@link ProjectedTest.Field}
     * @param count       how many
     */
    public record Field(String procedure, int days, boolean returned, boolean testedAgain, int fault, long count) {
    }

    /**
     * A measurement that was made.
     *
     * @param procedure by which procedure
     * @param name      the check
     * @param unit      its unit of measure
     * @param count     how often
     */
    public record Measured(String procedure, String name, String unit, long count) {
    }

    /**
     * One reading with where it comes from.
     *
     * @param openedMillis when its test was opened, in milliseconds since 1970
     * @param value        the number
     * @param serial       of which unit
     * @param technician   by whom
     * @param station      where
     * @param instrument   with which instrument
     */
    public record Read(long openedMillis, double value, String serial, String technician, String station, String instrument) {
    }

    /**
     * A departure or nonconformity with the test in which it was noted.
     *
     * @param test      the test's id
     * @param serial    the unit's serial number
     * @param family    its family's name
     * @param procedure by which procedure
     * @param deviation what
     */
    public record Deviated(String test, String serial, String family, String procedure, ProjectedTest.Deviation deviation) {
    }

    /**
     * A sealed test that somebody has to review.
     *
     * @param test       its id
     * @param serial     the unit's serial number
     * @param family     its family's name
     * @param procedure  by which procedure
     * @param technician who opened it
     * @param opened     when
     */
    public record ReviewDue(String test, String serial, String family, String procedure, String technician, Instant opened) {
    }
}
