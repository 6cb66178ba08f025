package org.benchwright.engine.record;

import java.util.EnumSet;
import java.util.Set;

/** Where a sealed record stands. */
public enum Standing {
    /** A departure or a nonconformity waits for an auditor's decision. */
    WAITING("waiting for a decision"),
    /** There was nothing to decide; nothing more is needed before the unit is handed over. */
    SEALED("sealed, with nothing to decide"),
    /** Everything is decided; nothing more is needed before the unit is handed over. */
    DECIDED("decided"),
    /** It was drawn for a review, and nobody has reviewed it as it stands. */
    REVIEW_DUE("due for review"),
    /** It was decided that the test is to be carried out again. */
    TO_REPEAT("to be repeated"),
    /** Somebody reviewed it and agreed. */
    REVIEWED("reviewed"),
    /** Somebody reviewed it and did not agree. */
    OBJECTED("reviewed, not agreed"),
    HANDED_OVER("handed over"),
    SUPERSEDED("superseded"),
    RECALLED("recalled"),
    VOID("void");

    private static final Set<Standing> ENDS = EnumSet.of(SUPERSEDED, RECALLED, VOID);

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    /** The words that are shown. */
    public String word() {
        return word;
    }

    /** Whether its certificate does not hold any more. */
    public boolean over() {
        return ENDS.contains(this);
    }
}
