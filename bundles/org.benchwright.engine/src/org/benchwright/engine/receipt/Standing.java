package org.benchwright.engine.receipt;

/** Where a unit that came in stands: its inspection status. */
public enum Standing {
    /** It came in and waits for its test. */
    WAITING,
    /** Its test is open. */
    ON_TEST,
    /** Its test is open, and it is on a soak. */
    ON_SOAK,
    /** It passed. */
    ACCEPTED,
    /** It did not. */
    REJECTED,
    /** Nobody can tell. */
    UNDECIDED,
    /** What its last test said counts no more: the record was made void, or the test is to be repeated. */
    NOT_VALID,
    /** It did not pass, was repaired since, and waits for its retest. */
    REPAIRED,
    /** It was handed over. */
    HANDED_OVER,
    /** It left without a test. */
    GIVEN_BACK,
    /** It came in again since. */
    CAME_AGAIN;

    /** Whether the unit is in the house. */
    public boolean inHouse() {
        return compareTo(HANDED_OVER) < 0;
    }
}
