package org.benchwright.language.internal.proof;

import org.benchwright.core.Texts;

/** The words of what a procedure proves. */
public final class ProofText {

    private static final Texts TEXTS = Texts.beside(ProofText.class, "words");

    private ProofText() {
    }

    /** The text of a key with its arguments put in. */
    public static String of(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }
}
