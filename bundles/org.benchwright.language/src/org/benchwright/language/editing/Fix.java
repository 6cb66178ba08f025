package org.benchwright.language.editing;

import java.util.List;
import java.util.Objects;

/**
 * A way to mend what a remark is about.
 *
 * @param label what it does, in a few words
 * @param edits what is replaced, in all files, by place; none overlap
 */
public record Fix(String label, List<Edit> edits) {
    public Fix {
        Objects.requireNonNull(label);
        edits = List.copyOf(edits);
    }
}
