package org.benchwright.language.internal.inspect;

import org.benchwright.core.Texts;

/** How a remark tells of a place in another file. */
enum ElsewhereText {
    IN_FILE;

    private static final Texts TEXTS = Texts.beside(ElsewhereText.class, "words");

    String text(String... arguments) {
        return TEXTS.text(name(), (Object[]) arguments);
    }
}
