package org.benchwright.language.editing;

import java.util.List;
import java.util.Objects;

/**
 * What there is to say about a word.
 *
 * @param offset where the word begins
 * @param length how many characters it has
 * @param title  what it is
 * @param lines  what it means, each line a sentence or a fact of its own
 */
public record Hover(int offset, int length, String title, List<String> lines) {
    public Hover {
        Objects.requireNonNull(title);
        lines = List.copyOf(lines);
    }

    /**
     * Title and lines.
     *
     * @return one below the other
     */
    public String text() {
        return lines.isEmpty() ? title : title + "\n" + String.join("\n", lines);
    }
}
