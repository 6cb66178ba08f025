package org.benchwright.language.editing;

import java.util.Objects;

/**
 * A name that is referred to, and where it is declared.
 *
 * @param offset      where the reference begins
 * @param length      how many characters, above 0
 * @param declaration the name where it is declared
 */
public record Link(int offset, int length, Place declaration) {
    public Link {
        Objects.requireNonNull(declaration);
    }
}
