package org.benchwright.core;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.internal.Message;

/**
 * The limits that a quantity must keep, ends included; one side may be open.
 *
 * @param lower the smallest conforming quantity, or nothing
 * @param upper the largest conforming quantity, or nothing
 */
public record Limits(Optional<Quantity> lower, Optional<Quantity> upper) {

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /**
     * Checks that there is a side, and that both are of one dimension. Inverted limits can be made, so that an editor
     * can remark on them; nothing lies within them.
     *
     * @throws IllegalArgumentException when both sides are open or the dimensions differ
     */
    public Limits {
        Objects.requireNonNull(lower);
        Objects.requireNonNull(upper);
        if (lower.isEmpty() && upper.isEmpty()) {
            throw new IllegalArgumentException(Message.LIMITS_NONE.text());
        }
        if (lower.isPresent() && upper.isPresent()) {
            lower.get().unit().requireSameDimension(upper.get().unit());
        }
    }

    /**
     * Limits on both sides.
     *
     * @param lower the smallest conforming quantity
     * @param upper the largest conforming quantity
     * @return the limits
     * @throws IllegalArgumentException when the dimensions differ
     */
    public static Limits between(Quantity lower, Quantity upper) {
        return new Limits(Optional.of(lower), Optional.of(upper));
    }

    /**
     * A lower limit only.
     *
     * @param lower the smallest conforming quantity
     * @return the limits
     */
    public static Limits atLeast(Quantity lower) {
        return new Limits(Optional.of(lower), Optional.empty());
    }

    /**
     * An upper limit only.
     *
     * @param upper the largest conforming quantity
     * @return the limits
     */
    public static Limits atMost(Quantity upper) {
        return new Limits(Optional.empty(), Optional.of(upper));
    }

    /**
     * Limits as a percentage of a nominal quantity's size: 24 V, 15, 20 gives 20.4 .. 28.8 V.
     *
     * @param nominal the nominal quantity, in a unit without an offset
     * @param minusPercent how far below, in percent, not negative
     * @param plusPercent how far above, in percent, not negative
     * @return the limits, in the nominal quantity's unit
     * @throws IllegalArgumentException when a percentage is negative or the nominal is given in degC
     */
    public static Limits around(Quantity nominal, BigDecimal minusPercent, BigDecimal plusPercent) {
        if (nominal.unit().hasOffset()) {
            throw new IllegalArgumentException(Message.UNIT_OFFSET_AROUND.text(nominal.toString()));
        }
        if (minusPercent.signum() < 0 || plusPercent.signum() < 0) {
            throw new IllegalArgumentException("Both percentages are distances and must not be negative: "
                    + minusPercent.toPlainString() + ", " + plusPercent.toPlainString());
        }
        return between(nominal.minus(part(nominal, minusPercent)), nominal.plus(part(nominal, plusPercent)));
    }

    /**
     * Whether a quantity keeps the limits; a quantity exactly on a limit does.
     *
     * @param quantity a quantity of the limits' dimension
     * @return true inside or on a limit
     * @throws IllegalArgumentException when the dimension is another
     */
    public boolean contains(Quantity quantity) {
        unit().requireSameDimension(quantity.unit());
        return lower.map(limit -> quantity.compareTo(limit) >= 0).orElse(true)
                && upper.map(limit -> quantity.compareTo(limit) <= 0).orElse(true);
    }

    /**
     * The unit in which the limits are talked about.
     *
     * @return the lower limit's unit, or the upper one's when there is no lower limit
     */
    public UnitOfMeasure unit() {
        return Stream.concat(lower.stream(), upper.stream()).findFirst().orElseThrow().unit();
    }

    /**
     * Whether the lower limit lies above the upper one.
     *
     * @return true when nothing can keep these limits
     */
    public boolean inverted() {
        return lower.isPresent() && upper.isPresent() && lower.get().compareTo(upper.get()) > 0;
    }

    /**
     * The limits in words.
     *
     * @return {@code 23.5 .. 24.5 V}, {@code at most 5 V} or {@code at least 3 V}
     */
    @Override
    public String toString() {
        if (lower.isEmpty()) {
            return Message.LIMITS_AT_MOST.text(upper.orElseThrow().toString());
        }
        if (upper.isEmpty()) {
            return Message.LIMITS_AT_LEAST.text(lower.orElseThrow().toString());
        }
        Quantity from = lower.get();
        Quantity to = upper.get();
        return from.unit().equals(to.unit())
                ? Message.LIMITS_BETWEEN.text(from.number(), to.number(), to.unit().word())
                : Message.LIMITS_BETWEEN_UNITS.text(from.toString(), to.toString());
    }

    private static Quantity part(Quantity nominal, BigDecimal percent) {
        BigDecimal part = nominal.value().abs().multiply(percent).divide(HUNDRED).stripTrailingZeros();
        return new Quantity(part, nominal.unit());
    }
}
