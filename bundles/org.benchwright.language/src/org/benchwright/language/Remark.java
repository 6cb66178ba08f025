package org.benchwright.language;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.Objects;

import org.benchwright.core.Severity;

/**
 * Something that the language tells the engineer about a text.
 *
 * @param file   the file that it is about
 * @param line   the line, from 1
 * @param column the column, from 1; a tab counts as one
 * @param offset where it begins, in characters from the start of the text
 * @param length how many characters it is about, 0 or more
 * @param code   what kind of remark it is
 * @param words  what is the matter, for people
 */
public record Remark(Path file, int line, int column, int offset, int length, RemarkCode code, String words)
        implements Comparable<Remark> {

    private static final Comparator<Remark> ORDER = Comparator.comparing(Remark::file).thenComparingInt(Remark::offset)
            .thenComparing(Remark::code).thenComparing(Remark::words).thenComparingInt(Remark::length);

    public Remark {
        Objects.requireNonNull(file);
        Objects.requireNonNull(code);
        Objects.requireNonNull(words);
        if (line < 1 || column < 1 || offset < 0 || length < 0) {
            throw new IllegalArgumentException("no place in a text: " + line + ":" + column + " " + offset + "+" + length);
        }
    }

    /**
     * How much it matters.
     *
     * @return the severity of its code
     */
    public Severity severity() {
        return code.severity();
    }

    /** By file, then by place. */
    @Override
    public int compareTo(Remark other) {
        return ORDER.compare(this, other);
    }

    /**
     * The remark in a line.
     *
     * @return {@code file:line:column: severity: code: words}
     */
    @Override
    public String toString() {
        return file + ":" + line + ":" + column + ": " + severity().word() + ": " + code.word() + ": " + words;
    }
}
