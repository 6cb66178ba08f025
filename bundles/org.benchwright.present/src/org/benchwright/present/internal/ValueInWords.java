package org.benchwright.present.internal;

import java.util.regex.Pattern;

/** Whether a sentence gives a value away. */
public final class ValueInWords {

    private ValueInWords() {
    }

    /**
     * Whether the value stands in the sentence, and not only the end of another one: 12 V does not tell 2 V, and neither do 0.2 V and -2 V.
     *
     * @param words a sentence
     * @param value a value with its unit, or words about one
     */
    public static boolean tells(String words, String value) {
        return Pattern.compile("(?<!\\p{Alnum}|\\d[.,]|(?:^|[\\s(])-)" + Pattern.quote(value) + "(?!\\p{Alnum})").matcher(words).find();
    }
}
