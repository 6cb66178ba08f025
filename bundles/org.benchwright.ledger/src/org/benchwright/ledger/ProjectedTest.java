package org.benchwright.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One test as figures count it: plain values that were derived from its events and can be derived again at any time.
 *
 * @param test       its id
 * @param opened     when it was opened
 * @param family     the family's name
 * @param procedure  the procedure's name
 * @param serial     the unit's serial number
 * @param technician who opened it
 * @param station    where
 * @param state      how it stands
 * @param first      true when it names no test before it of the same unit
 * @param soak       what its soak told, if there was one that tells anything
 * @param readings   what was measured
 * @param causes     nonconformities and faults
 * @param predecessor the test of the same unit before, if it names one
 * @param field      since when its unit is out there, and how it came back; nothing where it never went out
 * @param deviations departures and nonconformities, in order
 * @param reviewDue  whether it was drawn for a review that nobody has made yet, and nothing else comes first
 */
public record ProjectedTest(String test, Instant opened, String family, String procedure, String serial, String technician,
        String station, State state, boolean first, Optional<Soak> soak, List<Reading> readings, List<Cause> causes,
        Optional<String> predecessor, Optional<Field> field, List<Deviation> deviations, boolean reviewDue) {

    public ProjectedTest {
        readings = List.copyOf(readings);
        causes = List.copyOf(causes);
        deviations = List.copyOf(deviations);
    }

    /** A test without a departure or nonconformity. */
    public ProjectedTest(String test, Instant opened, String family, String procedure, String serial, String technician, String station,
            State state, boolean first, Optional<Soak> soak, List<Reading> readings, List<Cause> causes, Optional<String> predecessor,
            Optional<Field> field) {
        this(test, opened, family, procedure, serial, technician, station, state, first, soak, readings, causes, predecessor, field, List.of(),
                false);
    }

    /** How a test stands. */
    public enum State {
        ACCEPTED, REJECTED, UNDECIDED,
        /** Not ended yet. */
        OPEN,
        /** Derives no verdict: counts nowhere. */
        REHEARSAL,
        /** The record cannot be what happened: counts nowhere, and verification says why. */
        FAULTY,
        /** The record is void: nothing follows from it, so it counts nowhere. */
        VOID;

        /** Whether figures count it. */
        public boolean counts() {
            return ordinal() <= OPEN.ordinal();
        }
    }

    /**
     * Between which witnessed times a unit on soak stopped.
     *
     * @param afterSeconds the last time at which it was seen working
     * @param bySeconds    the first at which it was seen stopped; empty when it never was
     */
    public record Soak(long afterSeconds, Optional<Long> bySeconds) {
    }

    /**
     * A reading that was not struck.
     *
     * @param name       the check
     * @param unit       its unit of measure
     * @param value      the number
     * @param instrument the instrument's asset number, or the word for an unnamed one
     */
    public record Reading(String name, String unit, double value, String instrument) {
    }

    /**
     * A unit that went out. Days are counted from 1970, in UTC.
     *
     * @param since    the day on which it went out
     * @param returned the day on which it came back, if it did
     * @param fault    what was found then, by its place in the list of what can be: 0 for the first; -1 where it never came back
     */
    public record Field(long since, Optional<Long> returned, int fault) {
    }

    /**
     * Something found.
     *
     * @param fault true for a line of the unit's fault log, false for a nonconformity
     * @param name  the code, or the stage and step
     */
    public record Cause(boolean fault, String name) {
    }

    /** How a departure or nonconformity stands. */
    public enum Stand {
        /** Its test is not sealed yet. */
        TEST_OPEN,
        /** An auditor has to decide. */
        WAITING, DECIDED,
        /** Nobody decided before the record was void, recalled or superseded. */
        PASSED_OVER
    }

    /**
     * A departure or nonconformity.
     *
     * @param sequence      number of the event that noted it
     * @param nonconformity false for a departure
     * @param stage         where; may be empty
     * @param step          where; may be empty
     * @param noted         when
     * @param words         what
     * @param stand         how it stands
     * @param decision      what was decided, if something was
     */
    public record Deviation(long sequence, boolean nonconformity, String stage, String step, Instant noted, String words, Stand stand,
            Optional<Decided> decision) {
    }

    /**
     * A decision.
     *
     * @param word    what was decided
     * @param reason  why
     * @param by      who signed
     * @param instant when
     */
    public record Decided(String word, String reason, String by, Instant instant) {
    }
}
