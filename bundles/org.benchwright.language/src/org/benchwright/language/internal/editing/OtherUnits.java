package org.benchwright.language.internal.editing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;

/** A quantity in the other units that a reader may think in. */
final class OtherUnits {

    private static final MathContext READABLE = new MathContext(6);
    private static final BigDecimal SMALLEST = new BigDecimal("0.05");
    private static final BigDecimal LARGEST = new BigDecimal("99999");
    private static final int MOST = 3;

    private OtherUnits() {
    }

    /** A line for each unit in which the number is of a readable size; the three that are offered first. */
    static List<String> of(Quantity quantity) {
        return UnitOfMeasure.words().stream().map(UnitOfMeasure::of)
                .filter(unit -> unit.sameDimension(quantity.unit()) && !unit.equals(quantity.unit()))
                .filter(unit -> isSensible(quantity.unit(), unit))
                .map(unit -> new Quantity(quantity.to(unit).value().round(READABLE), unit))
                .filter(other -> isReadable(other.value())).limit(MOST)
                .map(other -> EditingText.AMOUNT_IS.text(quantity.value().toPlainString() + " " + quantity.unit(),
                        plain(other.value()) + " " + other.unit()))
                .toList();
    }

    /** A difference of temperatures is no temperature: K and degC are not offered for each other, though they have one dimension. */
    private static boolean isSensible(UnitOfMeasure one, UnitOfMeasure other) {
        return one.hasOffset() == other.hasOffset();
    }

    private static boolean isReadable(BigDecimal value) {
        BigDecimal size = value.abs();
        return size.signum() == 0 || size.compareTo(SMALLEST) >= 0 && size.compareTo(LARGEST) <= 0;
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
