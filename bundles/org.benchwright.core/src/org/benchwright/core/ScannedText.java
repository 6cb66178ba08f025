package org.benchwright.core;

import java.text.Normalizer;

/** What a scanner or a keyboard gave: a scanner sends control characters around and between what it read, and a keyboard blanks. */
public final class ScannedText {

    /** Stands in the place of each byte that was none of a text. */
    private static final char UNREADABLE = '\uFFFD';

    private ScannedText() {
    }

    /** Whether something of it could not be read: a scanner sent it, or a file holds it, in another encoding than UTF-8. */
    public static boolean isGarbled(String typed) {
        return typed.indexOf(UNREADABLE) >= 0;
    }

    /**
     * The text without characters that nobody sees, without blanks around it, in Unicode normal form C.
     *
     * @param typed as it came; may hold anything
     * @return the text, empty if nothing is left
     */
    public static String clean(String typed) {
        StringBuilder kept = new StringBuilder();
        typed.codePoints().filter(c -> !SerialNumber.hasControlCharacter(Character.toString(c))).forEach(kept::appendCodePoint);
        return Normalizer.normalize(kept.toString().strip(), Normalizer.Form.NFC);
    }
}
