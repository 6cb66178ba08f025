package org.benchwright.report;

/** For which ground a chart is drawn. */
public enum Look {
    /** A bright screen. */
    LIGHT,
    /** A dim screen. */
    DARK,
    /** White paper, where colours may come out as greys. */
    PRINT
}
