package org.benchwright.language.editing;

import java.util.Objects;

/**
 * A passage of one meaning.
 *
 * @param offset  where it begins, in characters from the start of the text
 * @param length  how many characters, above 0
 * @param meaning what it means
 */
public record Style(int offset, int length, Meaning meaning) {
    public Style {
        Objects.requireNonNull(meaning);
        if (offset < 0 || length < 1) {
            throw new IllegalArgumentException("no passage: " + offset + "+" + length);
        }
    }

    /**
     * Where it ends.
     *
     * @return the offset of the first character behind it
     */
    public int end() {
        return offset + length;
    }
}
