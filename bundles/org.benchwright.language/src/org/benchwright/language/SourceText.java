package org.benchwright.language;

import java.nio.file.Path;
import java.util.Objects;

/**
 * A text to check.
 *
 * @param path where it is or will be; its ending tells that it is ours, its folder which other files it sees
 * @param text its characters
 */
public record SourceText(Path path, String text) {
    public SourceText {
        Objects.requireNonNull(path);
        Objects.requireNonNull(text);
    }
}
