package org.benchwright.language.speed.tests;

/** Types one statement over and over: letter by letter, then back again. */
final class Typing {

    private static final String TYPED = "\n            expect ok red steady within 3 s of m0 or go to read_log // soon";

    private final String before;
    private final String after;
    private int letters;
    private int direction = 1;

    /** Types behind a mark in the middle of a text; what is typed refers to a mark of another step, which is a mistake. */
    Typing(String text) {
        int at = text.indexOf('\n', text.indexOf("mark ", text.length() / 2));
        before = text.substring(0, at);
        after = text.substring(at);
    }

    /** The text as it is. */
    String text() {
        return before + TYPED.substring(0, letters) + after;
    }

    /** The text with a letter more, or less. */
    String next() {
        if (letters == TYPED.length() && direction > 0 || letters == 0 && direction < 0) {
            direction = -direction;
        }
        letters += direction;
        return text();
    }
}
