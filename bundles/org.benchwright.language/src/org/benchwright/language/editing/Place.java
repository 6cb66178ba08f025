package org.benchwright.language.editing;

import java.nio.file.Path;
import java.util.Objects;

/**
 * A passage in a file.
 *
 * @param file   the file
 * @param offset where it begins, in characters from the start of the text
 * @param length how many characters, 0 or more
 */
public record Place(Path file, int offset, int length) implements Comparable<Place> {
    public Place {
        Objects.requireNonNull(file);
        if (offset < 0 || length < 0) {
            throw new IllegalArgumentException("no place: " + offset + "+" + length);
        }
    }

    /** By file, then by offset. */
    @Override
    public int compareTo(Place other) {
        int byFile = file.compareTo(other.file);
        return byFile != 0 ? byFile : Integer.compare(offset, other.offset);
    }
}
