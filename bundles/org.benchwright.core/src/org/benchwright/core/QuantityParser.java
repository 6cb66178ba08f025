package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.QuantityFormatException.Problem;
import org.benchwright.core.internal.Message;

/** Reads what a person typed as a quantity, and says what is wrong when it is none. */
final class QuantityParser {

    /** No quantity of the shop needs more; a longer text is a scan or a paste gone wrong. */
    static final int LONGEST = 40;

    private static final String DEFAULT_NUMBER = "23.9";
    private static final String BLANK = "[ \\u00a0\\u202f]";
    // U+2212 is the minus sign that text programs put in the place of a hyphen.
    private static final Pattern QUANTITY = Pattern.compile(
            "([+\\-\\u2212]?)([0-9]+(?:[.,][0-9]+)?)(?:" + BLANK + "?([^\\s0-9.,'+\\-][^\\s]*))?");
    private static final Pattern NUMBER_PART = Pattern.compile("[+\\-\\u2212]?[0-9.,'\\u2019]*");
    private static final Pattern GROUPED = Pattern.compile(
            "[+\\-\\u2212]?[0-9]+(?:(?:[ \\u00a0\\u202f'\\u2019])[0-9]+)+.*");

    private final Optional<UnitOfMeasure> assumed;

    QuantityParser(Optional<UnitOfMeasure> assumed) {
        this.assumed = assumed;
    }

    Quantity parse(String text) {
        String trimmed = text.strip();
        if (trimmed.isEmpty()) {
            throw fault(Problem.EMPTY, Message.QUANTITY_EMPTY.text(), DEFAULT_NUMBER);
        }
        if (trimmed.length() > LONGEST) {
            throw fault(Problem.TOO_LONG, Message.QUANTITY_TOO_LONG.text(Integer.toString(LONGEST)), DEFAULT_NUMBER);
        }
        Matcher matcher = QUANTITY.matcher(trimmed);
        if (!matcher.matches()) {
            throw explain(trimmed);
        }
        String sign = matcher.group(1).isEmpty() || matcher.group(1).equals("+") ? "" : "-";
        String number = sign + matcher.group(2).replace(',', '.');
        UnitOfMeasure unit = unit(trimmed, number, Optional.ofNullable(matcher.group(3)));
        return new Quantity(new BigDecimal(number), unit);
    }

    private UnitOfMeasure unit(String text, String number, Optional<String> word) {
        if (word.isEmpty()) {
            return assumed.orElseThrow(
                    () -> fault(Problem.NO_UNIT, Message.QUANTITY_NO_UNIT.text(text), number));
        }
        UnitOfMeasure unit = UnitOfMeasure.find(word.get()).orElseThrow(() -> unknownUnit(number, word.get()));
        if (assumed.isPresent() && !assumed.get().sameDimension(unit)) {
            throw fault(Problem.OTHER_DIMENSION,
                    Message.QUANTITY_OTHER_DIMENSION.text(text, assumed.get().word()), number);
        }
        return unit;
    }

    private QuantityFormatException unknownUnit(String number, String word) {
        return UnitOfMeasure.words().stream()
                .filter(known -> known.equalsIgnoreCase(word))
                .filter(known -> assumed.isEmpty() || assumed.get().sameDimension(UnitOfMeasure.of(known)))
                .findFirst()
                .map(near -> new QuantityFormatException(Problem.UNKNOWN_UNIT,
                        Message.QUANTITY_UNKNOWN_UNIT_NEAR.text(word, near), number + " " + near))
                .orElseGet(() -> fault(Problem.UNKNOWN_UNIT, Message.QUANTITY_UNKNOWN_UNIT.text(word), number));
    }

    private QuantityFormatException explain(String text) {
        if (GROUPED.matcher(text).matches()) {
            String digits = text.replaceAll("[^0-9]", "");
            return fault(Problem.GROUPED_DIGITS, Message.QUANTITY_GROUPED.text(text), digits);
        }
        Matcher start = NUMBER_PART.matcher(text);
        String number = start.lookingAt() ? start.group() : "";
        long separators = number.chars().filter(c -> c == '.' || c == ',').count();
        if (separators > 1) {
            return fault(Problem.TWO_SEPARATORS, Message.QUANTITY_TWO_SEPARATORS.text(text), DEFAULT_NUMBER);
        }
        if (separators == 1 && number.chars().anyMatch(c -> c >= '0' && c <= '9')) {
            return fault(Problem.BARE_SEPARATOR, Message.QUANTITY_BARE_SEPARATOR.text(text), "0.5");
        }
        if (number.isEmpty() || number.chars().noneMatch(c -> c >= '0' && c <= '9')) {
            return fault(Problem.NOT_A_NUMBER, Message.QUANTITY_NOT_A_NUMBER.text(text), DEFAULT_NUMBER);
        }
        String rest = text.substring(number.length()).strip();
        String example = number.matches("-?[0-9]+") ? number : DEFAULT_NUMBER;
        return fault(Problem.UNKNOWN_UNIT, Message.QUANTITY_UNKNOWN_UNIT.text(rest), example);
    }

    private QuantityFormatException fault(Problem problem, String words, String number) {
        return new QuantityFormatException(problem, words,
                number + " " + assumed.map(UnitOfMeasure::word).orElse("V"));
    }
}
