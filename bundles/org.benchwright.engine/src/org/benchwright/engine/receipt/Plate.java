package org.benchwright.engine.receipt;

/** What the type plate of a unit told when it came in. */
public enum Plate {
    /** A serial number that looks as those of its family do. */
    READ("read"),
    /** A serial number that looks like none that is known here; it was looked at twice and kept as it was typed. */
    AS_TYPED("kept as typed"),
    /** There is no plate: the unit goes by a tag of the workshop's. */
    MISSING("missing"),
    /** There is one, but nobody can read it: the unit goes by a tag of the workshop's. */
    UNREADABLE("unreadable");

    private final String word;

    Plate(String word) {
        this.word = word;
    }

    /** The word that is shown. */
    public String word() {
        return word;
    }

    /** Whether the unit goes by a tag of the workshop's. */
    public boolean tagged() {
        return this == MISSING || this == UNREADABLE;
    }
}
