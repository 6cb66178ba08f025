package org.benchwright.language.editing;

import java.util.Objects;

/**
 * A passage of more than one line that can be folded to its first.
 *
 * @param kind   what it is
 * @param offset where its first line's passage begins
 * @param length how many characters to its end
 */
public record Fold(Kind kind, int offset, int length) {
    public Fold {
        Objects.requireNonNull(kind);
    }

    /** What is folded. */
    public enum Kind {
        /** Something with braces: a family, a procedure, a stage, a step, and so on. */
        BLOCK,
        /** A comment over several lines, or several comments of one line below each other. */
        COMMENT,
        /** Several imports. */
        IMPORTS
    }
}
