package org.benchwright.core.internal;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Objects;

import tech.units.indriya.function.RationalNumber;

/**
 * A positive ratio of whole numbers: how many coherent units one shop unit is worth, without a rounding.
 *
 * @param numerator above the line, positive
 * @param denominator below the line, positive
 */
public record Fraction(BigInteger numerator, BigInteger denominator) {

    /** Checks the signs and takes the lowest terms, so that equal sizes are equal. */
    public Fraction {
        Objects.requireNonNull(numerator);
        Objects.requireNonNull(denominator);
        if (numerator.signum() <= 0 || denominator.signum() <= 0) {
            throw new IllegalArgumentException("A unit's size must be positive: " + numerator + "/" + denominator);
        }
        BigInteger common = numerator.gcd(denominator);
        numerator = numerator.divide(common);
        denominator = denominator.divide(common);
    }

    /**
     * One size in terms of another.
     *
     * @param other another size
     * @return this through the other
     */
    public Fraction through(Fraction other) {
        return new Fraction(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    /**
     * Takes over a number of the units library.
     *
     * @param number a whole, decimal or rational number
     * @return the same as a fraction
     */
    public static Fraction of(Number number) {
        if (number instanceof RationalNumber rational) {
            return new Fraction(rational.getDividend(), rational.getDivisor());
        }
        BigDecimal decimal = new BigDecimal(number.toString());
        int scale = Math.max(0, decimal.scale());
        return new Fraction(decimal.movePointRight(scale).toBigIntegerExact(), BigInteger.TEN.pow(scale));
    }
}
