package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as figures write them: a point, no grouping, no more digits than can be meant. */
final class Numbers {

    private static final double LARGEST_PLAIN = 1e9;

    private Numbers() {
    }

    /** With this many significant digits. */
    static String significant(double number, int digits) {
        if (!Double.isFinite(number) || Math.abs(number) >= LARGEST_PLAIN) {
            return Double.isFinite(number) ? String.format(Locale.ROOT, "%." + (digits - 1) + "e", number) : "-";
        }
        BigDecimal rounded = new BigDecimal(number, new MathContext(digits));
        return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
    }

    /** Rounded down, so that what is said to be at least that is: whole from ten on, below with two significant digits. */
    static String atLeast(double number) {
        return number < 10 ? new BigDecimal(number).round(new MathContext(2, RoundingMode.FLOOR)).toPlainString()
                : significant(Math.floor(number), 4);
    }

    /** A reading, without the zeros that nobody read. */
    static String reading(double number) {
        return Math.abs(number) < LARGEST_PLAIN && number != 0 ? new BigDecimal(significant(number, 9)).stripTrailingZeros().toPlainString()
                : significant(number, 9);
    }

    /** A part as percent with one digit. */
    static String percent(double part) {
        return String.format(Locale.ROOT, "%.1f", 100 * part);
    }

    /** What comes after the letter p: small ones as an upper bound. */
    static String probability(double p) {
        return p < 0.001 ? "< 0.001" : String.format(Locale.ROOT, "= %.3f", p);
    }
}
