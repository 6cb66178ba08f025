package org.benchwright.ui.internal.desk;

/** Is told what changes on the desk, on whichever thread changed it. */
@FunctionalInterface
public interface DeskListener {

    /** What changed. */
    enum Change {
        /** A test that is open here. */
        TEST,
        /** The list of units on the bench. */
        UNITS,
        /** Which unit is selected. */
        SELECTION
    }

    /**
     * Something changed.
     *
     * @param test the test's id; empty for the list
     */
    void changed(Change change, String test);
}
