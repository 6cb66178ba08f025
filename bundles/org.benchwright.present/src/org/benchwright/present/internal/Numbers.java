package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.math.MathContext;
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

    /** A part as percent with one digit. */
    static String percent(double part) {
        return String.format(Locale.ROOT, "%.1f", 100 * part);
    }

    /** What comes after the letter p: small ones as an upper bound. */
    static String probability(double p) {
        return p < 0.001 ? "< 0.001" : String.format(Locale.ROOT, "= %.3f", p);
    }
}
