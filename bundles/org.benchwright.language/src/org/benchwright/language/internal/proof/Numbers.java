package org.benchwright.language.internal.proof;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Locale;

import org.benchwright.core.Durations;

/** Numbers as people read them; never rounded to the better side. */
final class Numbers {

    private static final double SMALLEST = 1e-6;
    private static final MathContext TWO_DIGITS_UP = new MathContext(2, RoundingMode.CEILING);

    private Numbers() {
    }

    /** A risk in percent: two digits, rounded up. */
    static String risk(double share) {
        if (share < SMALLEST) {
            return ProofText.of("number.tiny");
        }
        return new BigDecimal(share * 100).round(TWO_DIGITS_UP).stripTrailingZeros().toPlainString() + " %";
    }

    /** A chance of missing something in percent: one place, rounded up; small ones as a risk. */
    static String missed(double share) {
        return share < 0.01 ? risk(share) : new BigDecimal(share * 100).setScale(1, RoundingMode.CEILING).toPlainString() + " %";
    }

    /** A chance of finding something in percent: one place, rounded down. */
    static String chance(double share) {
        return new BigDecimal(share * 100).setScale(1, RoundingMode.FLOOR).toPlainString() + " %";
    }

    /** A probability that somebody wrote. */
    static String level(double share) {
        return new BigDecimal(share * 100).round(new MathContext(4)).stripTrailingZeros().toPlainString() + " %";
    }

    /** A time, cut to minutes from an hour on. */
    static String cut(Duration time) {
        return Durations.words(time.compareTo(Duration.ofHours(1)) >= 0 ? Duration.ofMinutes(time.toMinutes())
                : Duration.ofSeconds(time.toSeconds()));
    }

    /** A number to three digits. */
    static String three(double number) {
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(3));
        return (rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros()).toPlainString();
    }

    /** A whole number in groups of three digits. */
    static String count(BigInteger number) {
        return String.format(Locale.ROOT, "%,d", number);
    }
}
