package org.benchwright.language.internal.compile;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * The few words that a plan has and the text has not, from {@code plan-words.properties}; one fixed language, since a plan must come
 * out the same anywhere.
 */
final class CompileWords {

    private static final ResourceBundle TEXT = ResourceBundle.getBundle("org.benchwright.language.internal.compile.plan-words",
            Locale.ROOT, CompileWords.class.getClassLoader(),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));

    private CompileWords() {
    }

    static String of(String key) {
        return TEXT.getString(key);
    }

    /** With something put in. */
    static String of(String key, String what) {
        return new MessageFormat(TEXT.getString(key), Locale.ROOT).format(new Object[] { what });
    }
}
