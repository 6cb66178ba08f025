package org.benchwright.engine.instrument;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;

/**
 * One range of an instrument with its accuracy: so many percent of the reading and so many digits.
 *
 * @param use      whether it reads or gives
 * @param current  {@code ac} or {@code dc}, empty where that says nothing
 * @param from     the smallest value
 * @param to       the largest value, in a unit of the same kind
 * @param percent  percent of the reading, 0 or more
 * @param digits   how many digits, 0 or more
 * @param digit    what one digit is worth, in a unit of the same kind, 0 or more
 * @param coverage the coverage factor that the accuracy is stated for; empty where it is stated as limits of error
 */
public record InstrumentRange(InstrumentUse use, String current, Quantity from, Quantity to, BigDecimal percent, BigDecimal digits,
        Quantity digit, Optional<BigDecimal> coverage) {

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    /** Two significant digits and one to be safe with (JCGM 100:2008, 7.2.6). */
    private static final int SHOWN = 3;

    /** Whether a value lies in it. */
    public boolean covers(Quantity value) {
        return from.unit().sameDimension(value.unit()) && from.compareTo(value) <= 0 && to.compareTo(value) >= 0;
    }

    /**
     * The half width of its accuracy at a reading: {@code percent / 100 * |reading| + digits * digit}.
     *
     * @param reading a value of the same kind
     * @return in the unit of the digit, or of differences of it
     */
    public Quantity halfWidth(Quantity reading) {
        UnitOfMeasure unit = digit.unit().forDifferences();
        BigDecimal share = reading.exactIn(digit.unit()).abs().multiply(percent).divide(HUNDRED, MathContext.DECIMAL64);
        return new Quantity(share.add(digits.multiply(digit.value())).stripTrailingZeros(), unit);
    }

    /**
     * The expanded uncertainty at a reading. Limits of error hold any value within them alike: standard uncertainty a/&radic;3 (JCGM
     * 100:2008, 4.3.7); a stated coverage factor k: a/k (4.3.3). Rounded up to three significant digits.
     *
     * @param wanted the coverage factor of the result, above 0
     */
    public Quantity expanded(Quantity reading, BigDecimal wanted) {
        Quantity half = halfWidth(reading);
        BigDecimal divisor = coverage.orElseGet(() -> BigDecimal.valueOf(3).sqrt(MathContext.DECIMAL64));
        BigDecimal expanded = half.value().multiply(wanted).divide(divisor, MathContext.DECIMAL64);
        return new Quantity(plain(expanded.round(new MathContext(SHOWN, RoundingMode.UP))), half.unit());
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** Such as {@code reads 0 V to 60 V dc, 0.05 % of reading + 2 digits of 0.01 V}. */
    public String words() {
        StringBuilder words = new StringBuilder(use.word()).append(' ').append(from).append(" to ").append(to);
        words.append(current.isEmpty() ? "" : " " + current).append(", ").append(percent.toPlainString()).append(" % of reading + ")
                .append(digits.toPlainString()).append(digits.compareTo(BigDecimal.ONE) == 0 ? " digit of " : " digits of ").append(digit);
        coverage.ifPresent(k -> words.append(", k ").append(k.toPlainString()));
        return words.toString();
    }
}
