package org.benchwright.engine.event;

/** Ways in which the work can depart from the procedure. */
public enum DepartureKind {
    /** A stage took longer than it may. */
    LATE_STAGE,
    /** A look came later than its tolerance. */
    LATE_LOOK,
    /** An instrument's calibration was past due. */
    INSTRUMENT_PAST_DUE,
    /** A check that did not conform was released. */
    RELEASED,
    /** Something was carried out again. */
    REPEATED,
    /** Work was interrupted. */
    INTERRUPTED,
    /** A condition around a soak was outside its limits. */
    OUTSIDE_CONDITIONS,
    /** Wall time was stepped during the test. */
    CLOCK_CHANGED,
    /** The technician ended the test early. */
    ABANDONED,
    /** The unit goes by a tag, or by a serial number that looks like none of its family. */
    SERIAL_NOT_READ
}
