package org.benchwright.present;

import java.util.List;

import org.benchwright.engine.revision.Revision;

/**
 * A revision of a procedure as it stands.
 *
 * @param procedure what people call the procedure
 * @param key       what the ledger keeps its revisions by
 * @param family    the name of the family that it is for; empty in a record that was made before families were told apart
 * @param number    its revision
 * @param state     how it stands
 * @param words     the same in words
 * @param history   who did what with it and when, in order
 * @param text      digest of its text
 * @param plan      digest of its plan
 */
public record RevisionRow(String procedure, String key, String family, int number, State state, String words, List<String> history, String text,
        String plan) {

    public RevisionRow {
        history = List.copyOf(history);
    }

    /** The procedure's name as its text has it. */
    public String name() {
        return Revision.procedureName(key);
    }

    /** How a revision stands. */
    public enum State {
        /** Nobody has signed it as it is; what was signed under its number may be another text. */
        DRAFT,
        /** One person has signed it. */
        PREPARED,
        /** A second person has approved it; new tests are opened by it. */
        APPROVED,
        /** A newer one is approved. */
        SUPERSEDED,
        /** It was taken back. */
        WITHDRAWN
    }
}
