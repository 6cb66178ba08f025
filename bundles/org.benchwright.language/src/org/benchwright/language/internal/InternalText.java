package org.benchwright.language.internal;

import org.benchwright.core.Texts;

/** Words that remarks are put together from, and what the language server says where something fails. */
public enum InternalText {
    NO_SUCH_FILE, FOR_FAMILY, NO_FAMILY_LIKE, SEVERAL_FAMILIES, NO_SUCH_METHOD, REQUEST_FAILED, NO_REMARKS, NOT_BEGUN, ALREADY_OVER;

    private static final Texts TEXTS = Texts.beside(InternalText.class, "messages");

    /**
     * The text with its arguments put in.
     *
     * @param arguments what {0}, {1} ... stand for
     * @return the text in the language of the machine, or in English where there is none
     */
    public String text(String... arguments) {
        return TEXTS.text(name(), (Object[]) arguments);
    }
}
