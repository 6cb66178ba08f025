package org.benchwright.language.editing;

import java.util.List;
import java.util.Objects;

/**
 * Something that could be written at a place.
 *
 * @param kind   what it is
 * @param label  what to show in the list
 * @param detail what it means, in a few words; may be empty
 * @param offset where what is typed already begins
 * @param length how many characters of it are replaced
 * @param text   what is written in their place; its lines are indented for that place
 * @param slots  passages of the text that the writer fills in, by place; empty where there is nothing to fill in
 */
public record Proposal(Kind kind, String label, String detail, int offset, int length, String text, List<Slot> slots) {

    /** What a proposal is. */
    public enum Kind {
        /** A whole statement, step, stage or file with slots to fill in. */
        TEMPLATE,
        /** A name that is declared somewhere. */
        NAME,
        /** A unit of measure. */
        UNIT,
        /** A word of the language. */
        KEYWORD
    }

    /**
     * A passage to fill in.
     *
     * @param offset from the start of the proposal's text
     * @param length how many characters stand there as an example
     */
    public record Slot(int offset, int length) {
    }

    public Proposal {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(label);
        Objects.requireNonNull(detail);
        Objects.requireNonNull(text);
        slots = List.copyOf(slots);
    }
}
