package org.benchwright.engine.internal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * The words that stand in records and refusals, from {@code words.properties}. They are one fixed language, since a record is derived
 * again when it is verified, and must come out the same anywhere.
 */
public final class Words {

    private static final ResourceBundle TEXT = ResourceBundle.getBundle("org.benchwright.engine.internal.words", Locale.ROOT,
            Words.class.getClassLoader(), ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));

    private Words() {
    }

    /** The text under {@code key} with its places filled. */
    public static String of(String key, Object... arguments) {
        Object[] texts = new Object[arguments.length];
        for (int i = 0; i < texts.length; i++) {
            texts[i] = String.valueOf(arguments[i]);
        }
        return new MessageFormat(TEXT.getString(key), Locale.ROOT).format(texts);
    }
}
