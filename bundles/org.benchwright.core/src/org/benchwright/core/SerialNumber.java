package org.benchwright.core;

import java.text.Normalizer;

import org.benchwright.core.internal.Message;

/**
 * The serial number of a unit, without blanks around it and in Unicode normal form C, so that the same plate always
 * gives the same text.
 *
 * @param text 1 to 64 characters, none of them a control character
 */
public record SerialNumber(String text) {

    private static final int LONGEST = 64;

    /**
     * Trims and normalises.
     *
     * @throws IllegalArgumentException when nothing is left, too much is, or a scanner slipped a control character in
     */
    public SerialNumber {
        text = Normalizer.normalize(text.strip(), Normalizer.Form.NFC);
        if (text.isEmpty()) {
            throw new IllegalArgumentException(Message.SERIAL_EMPTY.text());
        }
        if (text.length() > LONGEST) {
            throw new IllegalArgumentException(Message.SERIAL_TOO_LONG.text(Integer.toString(LONGEST)));
        }
        if (hasControlCharacter(text)) {
            throw new IllegalArgumentException(Message.SERIAL_CONTROL.text());
        }
    }

    /** Control characters, invisible format characters (they can turn a line round), lone surrogates, line breaks. */
    static boolean hasControlCharacter(String text) {
        return text.codePoints().map(Character::getType).anyMatch(type -> type == Character.CONTROL
                || type == Character.FORMAT || type == Character.SURROGATE
                || type == Character.LINE_SEPARATOR || type == Character.PARAGRAPH_SEPARATOR);
    }

    /**
     * The serial number itself.
     *
     * @return {@link #text()}
     */
    @Override
    public String toString() {
        return text;
    }
}
