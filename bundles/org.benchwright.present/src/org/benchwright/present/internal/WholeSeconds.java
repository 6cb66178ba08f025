package org.benchwright.present.internal;

import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Lengths of time in sentences of a record, told to the second from a minute on: by how much a look was late, between which times a unit
 * stopped. The record has them as finely as the bench's clock; nobody reads that.
 */
public final class WholeSeconds {

    private static final Pattern LONG = Pattern.compile("((?:\\d+ (?:h|min) )+)(\\d+)\\.\\d+ s\\b");

    private WholeSeconds() {
    }

    /**
     * The same sentence, begun seconds left out. A time that would then read as another one of the sentence, such as the limit that it is over,
     * stays as it was recorded.
     */
    public static String in(String words) {
        return LONG.matcher(words).replaceAll(found -> stands(whole(found), words) ? found.group() : whole(found));
    }

    private static String whole(MatchResult found) {
        return found.group(2).equals("0") ? found.group(1).strip() : found.group(1) + found.group(2) + " s";
    }

    /** Whether it stands there by itself, and not as a part of a longer one. */
    private static boolean stands(String time, String words) {
        return Pattern.compile("(?<![\\d.]|h )" + time + "(?! \\d+(?:\\.\\d+)? (?:min|s)\\b)").matcher(words).find();
    }
}
