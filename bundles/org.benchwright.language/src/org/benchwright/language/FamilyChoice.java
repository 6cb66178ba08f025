package org.benchwright.language;

/** For which of the families that a procedure applies to it is read: the one that it names, or one that is like it. */
public sealed interface FamilyChoice {

    /** The family that the procedure names. */
    record AsWritten() implements FamilyChoice {
    }

    /**
     * A family by its name.
     *
     * @param family the name of the family that the procedure names, or of one that is like it
     */
    record Called(String family) implements FamilyChoice {
    }

    /**
     * The family whose serial numbers look like this one: the one that the procedure names where it takes that number or says nothing about
     * numbers, else the one like it that does. Where none does it is the family that the procedure names.
     *
     * @param serial a unit's serial number as typed or scanned
     */
    record Fitting(String serial) implements FamilyChoice {
    }
}
