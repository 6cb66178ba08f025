package org.benchwright.present.internal;

import java.util.regex.Pattern;

/**
 * Lengths of time in sentences of a record, told to the second from a minute on: by how much a look was late, between which times a unit
 * stopped. The record has them as finely as the bench's clock; nobody reads that.
 */
public final class WholeSeconds {

    private static final Pattern NONE = Pattern.compile("(?<= (?:h|min)) 0\\.[0-9]+ s\\b");
    private static final Pattern SOME = Pattern.compile("(?<= (?:h|min) )([0-9]+)\\.[0-9]+ s\\b");

    private WholeSeconds() {
    }

    /** The same sentence, begun seconds left out. */
    public static String in(String words) {
        return SOME.matcher(NONE.matcher(words).replaceAll("")).replaceAll("$1 s");
    }
}
