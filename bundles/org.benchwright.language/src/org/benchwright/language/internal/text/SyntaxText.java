package org.benchwright.language.internal.text;

import org.benchwright.core.Texts;

/**
 * What people read about a text that does not fit the grammar.
 *
 * <p>The text is looked up when it is shown, never when the class is loaded, so that the first locale does not win.
 */
public enum SyntaxText {
    NUMBER_TOO_LONG, NOT_A_NUMBER, COUNT_TOO_LARGE, HIDDEN_CHARACTER, UNKNOWN_WORD, DOES_NOT_FIT, DOES_NOT_FIT_EXPECTED,
    ENDS_TOO_EARLY, ENDS_TOO_EARLY_EXPECTED, TEXT_NOT_CLOSED, COMMENT_NOT_CLOSED,
    A_NAME, A_TEXT, A_NUMBER, A_WHOLE_NUMBER, A_UNIT, A_COLOUR, A_LAMP_STATE, AN_OUTCOME, A_SOAK_OUTCOME, AN_AMOUNT,
    LIMITS, AN_INDICATION, THE_END, A_FILE, A_FAMILY, A_FAULT, A_PROCEDURE, A_STEP_LIST, A_SOAK, A_STATEMENT, AN_EXPRESSION,
    A_SIGNAL_WORD, A_VERDICT;

    private static final Texts TEXTS = Texts.beside(SyntaxText.class, "messages");

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
