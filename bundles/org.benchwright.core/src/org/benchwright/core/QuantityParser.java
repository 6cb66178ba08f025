package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.QuantityFormatException.Problem;

/** Reads what a person typed as a quantity. */
final class QuantityParser {

    /** No quantity of the shop needs more; a longer text is a scan or a paste gone wrong. */
    static final int LONGEST = 40;

    /** U+2212 is the minus sign that text programs put in the place of a hyphen, U+2013 the dash. */
    static final String SIGN = "[+\\-\\u2212\\u2013]?";
    /** Blanks of several widths, and what a table has between two cells. */
    static final String BLANK = "[ \\t\\u00a0\\u2007\\u2009\\u202f]";
    private static final Pattern QUANTITY = Pattern.compile(
            "(" + SIGN + ")([0-9]+(?:[.,][0-9]+)?)(?:" + BLANK + "*([^\\s0-9.,'+\\-][^\\s]*))?");

    private final Optional<UnitOfMeasure> assumed;

    QuantityParser(Optional<UnitOfMeasure> assumed) {
        this.assumed = assumed;
    }

    Quantity parse(String text) {
        String trimmed = text.strip();
        QuantityRefusal refusal = new QuantityRefusal(trimmed, assumed);
        Matcher matcher = QUANTITY.matcher(trimmed);
        if (trimmed.isEmpty() || trimmed.length() > LONGEST || !matcher.matches()) {
            throw refusal.because(trimmed.isEmpty() ? Problem.EMPTY : trimmed.length() > LONGEST ? Problem.TOO_LONG : refusal.problem());
        }
        Optional<String> word = Optional.ofNullable(matcher.group(3));
        UnitOfMeasure unit = word.isEmpty() ? assumed.orElseThrow(() -> refusal.because(Problem.NO_UNIT))
                : UnitOfMeasure.find(word.get()).orElseThrow(() -> refusal.because(refusal.problem()));
        if (assumed.filter(wanted -> !wanted.sameDimension(unit)).isPresent()) {
            throw refusal.because(Problem.OTHER_DIMENSION);
        }
        return new Quantity(number(matcher.group(1), matcher.group(2)), unit);
    }

    /** The number of that sign and those digits. */
    static BigDecimal number(String sign, String digits) {
        BigDecimal size = new BigDecimal(digits.replace(',', '.'));
        return sign.isEmpty() || sign.equals("+") ? size : size.negate();
    }
}
