package org.benchwright.language.editing;

/**
 * A passage of more than one line that can be folded to its first.
 *
 * @param offset where its first line's passage begins
 * @param length how many characters to its end
 */
public record Fold(int offset, int length) {
}
