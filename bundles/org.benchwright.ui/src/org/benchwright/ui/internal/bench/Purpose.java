package org.benchwright.ui.internal.bench;

/** What the step card's entry is for at the moment. */
enum Purpose {
    /** What the card asks. */
    ANSWER,
    /** The make-safe key was pressed: the reason, or first who takes the test up. */
    MAKE_SAFE,
    /** A note. */
    NOTE
}
