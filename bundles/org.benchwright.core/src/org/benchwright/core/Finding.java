package org.benchwright.core;

import java.util.Objects;

/**
 * Something found while checking a text, a plan or a record.
 *
 * @param severity how much it matters
 * @param code a stable name for the kind of finding, for programs and quick fixes
 * @param words what it is and what to do, for people
 */
public record Finding(Severity severity, String code, String words) {

    /**
     * Checks that the finding says something.
     *
     * @throws IllegalArgumentException when code or words are blank
     */
    public Finding {
        Objects.requireNonNull(severity);
        if (code.isBlank() || words.isBlank()) {
            throw new IllegalArgumentException("A finding needs a code and words.");
        }
    }

    /**
     * The finding in one line.
     *
     * @return {@code error: CODE: words}
     */
    @Override
    public String toString() {
        return severity.word() + ": " + code + ": " + words;
    }
}
