package org.benchwright.language.editing;

import java.nio.file.Path;
import java.util.Objects;

/**
 * Where something stands in the texts.
 *
 * @param name  its name, or its first word where it has none
 * @param whole all that belongs to it
 */
public record Passage(Place name, Place whole) {
    public Passage {
        Objects.requireNonNull(name);
        Objects.requireNonNull(whole);
    }

    /** Whether a place in a file lies in it, or right behind it. */
    public boolean holds(Path file, int offset) {
        return whole.file().equals(file) && whole.offset() <= offset && offset <= whole.offset() + whole.length();
    }
}
