package org.benchwright.language.internal.compile;

import org.benchwright.core.Texts;

/**
 * The few words that a plan has and the text has not, from {@code plan-words.properties}; one fixed language, since a plan must come
 * out the same anywhere.
 */
final class CompileWords {

    private static final Texts TEXTS = Texts.fixed(CompileWords.class, "plan-words");

    private CompileWords() {
    }

    static String of(String key) {
        return TEXTS.pattern(key);
    }

    /** With something put in. */
    static String of(String key, String what) {
        return TEXTS.text(key, what);
    }
}
