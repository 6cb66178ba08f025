package org.benchwright.language;

import java.util.Objects;
import java.util.Optional;

import org.benchwright.core.Digest;

/** Tells which revisions of procedures were approved, and with which text. Whoever keeps the records answers; the language only asks. */
@FunctionalInterface
public interface ApprovedRevisions {

    /**
     * A revision that was approved once, whether it was withdrawn since or not.
     *
     * @param text digest of its text with all that it refers to, in UTF-8
     * @param free the smallest number above all that were approved of this procedure
     */
    record Approved(Digest text, int free) {
        public Approved {
            Objects.requireNonNull(text);
        }
    }

    /**
     * Looks a revision up. Asked for every procedure that is checked, from any thread.
     *
     * @param procedure the procedure's name
     * @param family    the name of the family that it is for
     * @param number    its revision
     * @return empty if that revision was never approved
     */
    Optional<Approved> find(String procedure, String family, int number);

    /**
     * For a check that compares nothing.
     *
     * @return knows of no approval
     */
    static ApprovedRevisions none() {
        return (procedure, family, number) -> Optional.empty();
    }
}
