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
