package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;

import org.benchwright.core.internal.Message;

/**
 * A number with its unit of measure, exactly as it was written: {@code 23.90 V} keeps its last digit.
 *
 * <p>{@link #equals} compares what is written ({@code 23.9 V} is not {@code 23.90 V}, {@code 1 V} is not
 * {@code 1000 mV}); {@link #compareTo} and {@link #sameSize} compare what is meant.
 *
 * @param value the number; up to 100 digits before and after the point
 * @param unit the unit of measure
 */
public record Quantity(BigDecimal value, UnitOfMeasure unit) implements Comparable<Quantity> {

    private static final int MOST_DIGITS = 100;

    /**
     * Checks the number's length, so that printing it can't fill the memory.
     *
     * @throws IllegalArgumentException when the number has an absurd number of digits
     */
    public Quantity {
        Objects.requireNonNull(value);
        Objects.requireNonNull(unit);
        long leading = (long) value.precision() - value.scale();
        if (value.precision() > MOST_DIGITS || value.scale() > MOST_DIGITS || leading > MOST_DIGITS
                || value.scale() < -MOST_DIGITS) {
            throw new IllegalArgumentException("A quantity has at most " + MOST_DIGITS + " digits on either side.");
        }
        if (value.scale() < 0) {
            value = value.setScale(0);
        }
    }

    /**
     * A quantity from a number in Java's own notation.
     *
     * @param number such as {@code 23.90} or {@code -0.016}
     * @param unitWord a shop word
     * @return the quantity
     * @throws IllegalArgumentException when either is not understood
     */
    public static Quantity of(String number, String unitWord) {
        return new Quantity(new BigDecimal(number), UnitOfMeasure.of(unitWord));
    }

    /**
     * Reads what a person wrote: an optional sign, digits with at most one decimal point or comma, optional
     * blanks, a unit. {@code 24 V}, {@code 24V}, {@code 23,9V}, {@code -0.016 mA}. Digits are never grouped.
     *
     * @param text the text, at most 40 characters
     * @return the quantity, with the digits as written
     * @throws QuantityFormatException when the text is anything else
     */
    public static Quantity parse(String text) throws QuantityFormatException {
        return new QuantityParser(Optional.empty()).parse(text);
    }

    /**
     * Like {@link #parse(String)}, but a bare number is taken to be in the assumed unit.
     *
     * @param text the text
     * @param assumed the unit of a bare number; another unit of its dimension may be written
     * @return the quantity, in the unit that was written or else in the assumed one
     * @throws QuantityFormatException when the text is no quantity of the assumed unit's dimension
     */
    public static Quantity parse(String text, UnitOfMeasure assumed) throws QuantityFormatException {
        return new QuantityParser(Optional.of(assumed)).parse(text);
    }

    /**
     * The same quantity in another unit, without superfluous zeros: 23900 mV is 23.9 V.
     *
     * @param target a unit of the same dimension
     * @return exact wherever the result ends as a decimal number, else rounded to 34 digits
     * @throws IllegalArgumentException when the dimension is another
     */
    public Quantity to(UnitOfMeasure target) {
        if (target.equals(unit)) {
            return this;
        }
        return new Quantity(withoutTrailingZeros(unit.convert(value, target)), target);
    }

    /**
     * The nearest floating-point number, for mathematics that is inexact anyway.
     *
     * @param target a unit of the same dimension
     * @return the number in that unit
     * @throws IllegalArgumentException when the dimension is another
     */
    public double in(UnitOfMeasure target) {
        return unit.convert(value, target).doubleValue();
    }

    /**
     * The exact number in another unit, for decisions.
     *
     * @param target a unit of the same dimension
     * @return the number without any rounding
     * @throws ArithmeticException when it does not end as a decimal number (1 s in h)
     * @throws IllegalArgumentException when the dimension is another
     */
    public BigDecimal exactIn(UnitOfMeasure target) {
        return target.equals(unit) ? value : unit.convertExactly(value, target);
    }

    /**
     * The sum, in this quantity's unit. A point on a scale plus a difference is a point: 20 degC + 3 K is 23 degC.
     *
     * @param difference a quantity of the same dimension, in a unit without an offset
     * @return the sum
     * @throws IllegalArgumentException when the dimension is another or the difference is given in degC
     */
    public Quantity plus(Quantity difference) {
        if (difference.unit.hasOffset()) {
            throw new IllegalArgumentException(Message.UNIT_OFFSET_IN_SUM.text(difference.toString()));
        }
        unit.requireSameDimension(difference.unit);
        BigDecimal step = difference.unit.equals(unit) ? difference.value
                : withoutTrailingZeros(difference.unit.convert(difference.value, unit.forDifferences()));
        return new Quantity(value.add(step), unit);
    }

    /**
     * The difference. Two points on a scale give a difference: 25 degC - 20 degC is 5 K; 25 degC - 5 K is 20 degC.
     *
     * @param other a quantity of the same dimension
     * @return the difference, in this quantity's unit or in K for two temperatures in degC
     * @throws IllegalArgumentException when the dimension is another
     */
    public Quantity minus(Quantity other) {
        if (!other.unit.hasOffset()) {
            return plus(other.negate());
        }
        UnitOfMeasure plain = unit.forDifferences();
        if (unit.equals(other.unit)) {
            return new Quantity(value.subtract(other.value), plain);
        }
        return new Quantity(to(plain).value().subtract(other.to(plain).value()), plain);
    }

    /**
     * The quantity whose number has the other sign.
     *
     * @return -24 V for 24 V
     */
    public Quantity negate() {
        return new Quantity(value.negate(), unit);
    }

    /**
     * Compares sizes without rounding, whatever the units.
     *
     * @param other a quantity of the same dimension
     * @return negative, zero or positive as this one is smaller, the same or larger
     * @throws IllegalArgumentException when the dimension is another
     */
    @Override
    public int compareTo(Quantity other) {
        return UnitOfMeasure.compare(value, unit, other.value, other.unit);
    }

    /**
     * Whether both are of the same size: 1 V and 1000 mV are.
     *
     * @param other a quantity of the same dimension
     * @return true when neither is larger
     * @throws IllegalArgumentException when the dimension is another
     */
    public boolean sameSize(Quantity other) {
        return compareTo(other) == 0;
    }

    /**
     * The number alone, with all its digits, a point as separator, and no exponent.
     *
     * @return {@code 23.90}
     */
    public String number() {
        return value.toPlainString();
    }

    /**
     * Number and unit, readable by {@link #parse(String)}, whatever the machine's language.
     *
     * @return {@code 23.90 V}
     */
    @Override
    public String toString() {
        return number() + " " + unit.word();
    }

    private static BigDecimal withoutTrailingZeros(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
