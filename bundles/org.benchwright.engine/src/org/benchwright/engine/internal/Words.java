package org.benchwright.engine.internal;

import org.benchwright.core.Texts;

/**
 * The words that stand in records and refusals, from {@code words.properties}. They are one fixed language, since a record is derived
 * again when it is verified, and must come out the same anywhere.
 */
public final class Words {

    private static final Texts TEXTS = Texts.fixed(Words.class, "words");

    private Words() {
    }

    /** The text under {@code key} with its places filled. */
    public static String of(String key, Object... arguments) {
        return TEXTS.plain(key, arguments);
    }
}
