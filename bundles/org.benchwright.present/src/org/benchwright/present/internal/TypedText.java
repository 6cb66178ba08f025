package org.benchwright.present.internal;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.ScannedText;
import org.benchwright.present.EntryRefusedException;

/** Text that a person or a scanner typed: cleaned, or refused. */
final class TypedText {

    private static final int LONGEST = 4000;
    private static final char ESCAPE = '\u001b';

    private TypedText() {
    }

    /**
     * The text in Unicode normal form without blanks around it, and without what a scanner frames it with.
     *
     * @throws EntryRefusedException if it is too long or has control characters in the midst of it
     */
    static String clean(String typed) throws EntryRefusedException {
        String text = Normalizer.normalize(unframed(typed), Normalizer.Form.NFC);
        if (ScannedText.isGarbled(text)) {
            throw new EntryRefusedException(Message.REFUSED_GARBLED.text(text));
        }
        if (text.length() > LONGEST) {
            throw new EntryRefusedException(Message.REFUSED_TOO_LONG.text(String.valueOf(LONGEST)));
        }
        if (text.codePoints().anyMatch(TypedText::unprintable)) {
            throw new EntryRefusedException(Message.REFUSED_CONTROL.text());
        }
        return text;
    }

    /** An escape character stays, to be refused: what follows it came from a key, and is no text. */
    private static String unframed(String typed) {
        int from = 0;
        int to = typed.length();
        while (from < to && frames(typed.charAt(from))) {
            from++;
        }
        while (to > from && frames(typed.charAt(to - 1))) {
            to--;
        }
        return typed.substring(from, to);
    }

    private static boolean frames(char character) {
        int type = Character.getType(character);
        return Character.isWhitespace(character) || type == Character.CONTROL && character != ESCAPE || type == Character.FORMAT;
    }

    private static boolean unprintable(int codePoint) {
        int type = Character.getType(codePoint);
        boolean layout = codePoint == '\n' || codePoint == '\t';
        return !layout && (type == Character.CONTROL || type == Character.SURROGATE || type == Character.UNASSIGNED
                || type == Character.LINE_SEPARATOR || type == Character.PARAGRAPH_SEPARATOR);
    }

    /** True if the text is one of the words, letter case and runs of blanks ignored. */
    static boolean isOneOf(String text, Message words) {
        return wordList(words).contains(plain(text));
    }

    private static List<String> wordList(Message words) {
        return Arrays.stream(words.text().split(",", -1)).map(TypedText::plain).toList();
    }

    private static String plain(String text) {
        return text.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /**
     * What stands before a comma, a colon or a semicolon, and what stands behind it.
     *
     * @param head the word or words before the separator
     * @param rest what follows it, may be empty
     */
    record HeadAndRest(String head, String rest) {
    }

    /** Splits at the first comma, colon or semicolon. */
    static HeadAndRest split(String text) {
        Optional<Integer> at = text.chars().boxed().filter(c -> c == ',' || c == ':' || c == ';').findFirst().map(c -> text.indexOf(c));
        return at.map(i -> new HeadAndRest(text.substring(0, i).strip(), text.substring(i + 1).strip()))
                .orElse(new HeadAndRest(text, ""));
    }
}
