package org.benchwright.language.internal.format;

/**
 * A word or a comment of a text, with what its layout depends on.
 *
 * @param kind       what it is
 * @param offset     where it begins
 * @param text       its characters, without blanks at the end
 * @param lineBreaks how many line breaks stand before it
 * @param role       what it does to the lines
 * @param glued      true if no blank stands before it
 */
record Word(Kind kind, int offset, String text, int lineBreaks, Role role, boolean glued) {

    /** What a word is. */
    enum Kind {
        WORD,
        /** From two slashes to the end of the line. */
        LINE_COMMENT,
        /** Between slash-star and star-slash. */
        INNER_COMMENT
    }

    /** What a word does to the lines. */
    enum Role {
        /** Nothing. */
        INNER,
        /** Begins a statement, a clause of a block or a declaration. */
        BEGINS,
        /** Begins a clause that may stand below its statement's first word. */
        ALIGNED,
        /** A brace behind which a block begins. */
        OPENS,
        /** The brace at the end of a block. */
        CLOSES
    }

    int end() {
        return offset + text.length();
    }

    boolean isComment() {
        return kind != Kind.WORD;
    }
}
