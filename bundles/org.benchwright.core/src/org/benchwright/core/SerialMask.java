package org.benchwright.core;

import java.text.Normalizer;
import java.util.List;
import java.util.regex.Pattern;

import org.benchwright.core.internal.Message;

/**
 * What the serial numbers of a family look like: {@code #} stands for a digit 0 to 9, {@code @} for a letter A to Z or
 * a to z, {@code *} for either; every other character stands for itself. It is not a regular expression, so no mask can
 * make a check slow.
 *
 * @param mask such as {@code C16-######}; 1 to 64 characters
 */
public record SerialMask(String mask) {

    private static final int LONGEST = 64;
    private static final Pattern KIND_OF_CODE = Pattern.compile("^\\][A-Za-z][0-9A-Za-z]");

    /**
     * Checks the mask.
     *
     * @throws IllegalArgumentException when it is blank, too long or holds a control character
     */
    public SerialMask {
        if (mask.isBlank()) {
            throw new IllegalArgumentException(Message.MASK_EMPTY.text());
        }
        if (mask.length() > LONGEST) {
            throw new IllegalArgumentException(Message.MASK_TOO_LONG.text(Integer.toString(LONGEST)));
        }
        if (SerialNumber.hasControlCharacter(mask)) {
            throw new IllegalArgumentException(Message.MASK_CONTROL.text());
        }
    }

    /**
     * Whether a serial number looks like this.
     *
     * @param serial a text as read from the type plate
     * @return true when every character fits its place
     */
    public boolean accepts(String serial) {
        if (serial.length() != mask.length()) {
            return false;
        }
        for (int i = 0; i < mask.length(); i++) {
            if (!fits(mask.charAt(i), serial.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    /**
     * What a text that does not fit may have been meant for: in the other letter case, with other dashes, with blanks in it, or behind the
     * three characters by which a scanner tells the kind of code (ISO/IEC 15424). Of two scans one behind the other, both.
     *
     * @param scanned what was scanned or typed
     * @return serial numbers that fit; none, one, or two
     */
    public List<String> meant(String scanned) {
        String plain = KIND_OF_CODE.matcher(Normalizer.normalize(scanned, Normalizer.Form.NFKC)).replaceFirst("").replaceAll("\\s+", "")
                .replaceAll("\\p{Pd}|\u2212", "-");
        int length = mask.length();
        List<String> each = plain.length() == 2 * length ? List.of(plain.substring(0, length), plain.substring(length)) : List.of(plain);
        List<String> meant = each.stream().map(this::inMyCase).filter(this::accepts).toList();
        return meant.size() == each.size() ? meant : List.of();
    }

    private String inMyCase(String serial) {
        StringBuilder mine = new StringBuilder(serial);
        for (int i = 0; i < Math.min(mask.length(), serial.length()); i++) {
            boolean same = Character.toLowerCase(mask.charAt(i)) == Character.toLowerCase(serial.charAt(i));
            mine.setCharAt(i, same ? mask.charAt(i) : serial.charAt(i));
        }
        return mine.toString();
    }

    /**
     * A serial number that fits, for messages.
     *
     * @return the mask with 0 and A in its places
     */
    public String example() {
        return mask.replace('#', '0').replace('@', 'A').replace('*', '0');
    }

    private static boolean fits(char place, char character) {
        return switch (place) {
            case '#' -> isDigit(character);
            case '@' -> isLetter(character);
            case '*' -> isDigit(character) || isLetter(character);
            default -> place == character;
        };
    }

    private static boolean isDigit(char character) {
        return character >= '0' && character <= '9';
    }

    private static boolean isLetter(char character) {
        return character >= 'A' && character <= 'Z' || character >= 'a' && character <= 'z';
    }
}
