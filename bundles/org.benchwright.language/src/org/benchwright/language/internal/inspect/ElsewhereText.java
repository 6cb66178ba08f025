package org.benchwright.language.internal.inspect;

import org.benchwright.core.Texts;

/** How a remark tells of another place. */
enum ElsewhereText {
    IN_FILE, IN_LINE, IN_LINE_OF;

    private static final Texts TEXTS = Texts.beside(ElsewhereText.class, "words");

    String text(String... arguments) {
        return TEXTS.text(name(), (Object[]) arguments);
    }
}
