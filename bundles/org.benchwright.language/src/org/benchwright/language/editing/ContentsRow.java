package org.benchwright.language.editing;

import java.util.List;
import java.util.Objects;

/**
 * A row of a text's contents.
 *
 * @param kind     what it stands for
 * @param name     its name in the text; empty for a group and for make safe
 * @param label    what the reader calls it
 * @param offset   where its name, or its first word, begins
 * @param length   how many characters that is
 * @param end      the offset behind all that belongs to it
 * @param children the rows below it, in the order of the text
 */
public record ContentsRow(ContentsKind kind, String name, String label, int offset, int length, int end,
        List<ContentsRow> children) {
    public ContentsRow {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(name);
        Objects.requireNonNull(label);
        children = List.copyOf(children);
    }
}
