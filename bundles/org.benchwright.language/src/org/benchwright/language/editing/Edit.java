package org.benchwright.language.editing;

import java.util.Objects;

/**
 * A passage that is replaced.
 *
 * @param place what is replaced
 * @param text  what stands there afterwards
 */
public record Edit(Place place, String text) {
    public Edit {
        Objects.requireNonNull(place);
        Objects.requireNonNull(text);
    }
}
