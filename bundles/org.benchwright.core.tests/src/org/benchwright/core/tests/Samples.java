package org.benchwright.core.tests;

import java.math.BigDecimal;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** What the laws are tried on. */
final class Samples {

    private Samples() {
    }

    static Arbitrary<BigDecimal> decimals() {
        return Arbitraries.bigDecimals().between(new BigDecimal("-1000000"), new BigDecimal("1000000"))
                .ofScale(6).map(BigDecimal::stripTrailingZeros).map(Samples::plain);
    }

    static Arbitrary<UnitOfMeasure> units() {
        return Arbitraries.of(UnitOfMeasure.words()).map(UnitOfMeasure::of);
    }

    static Arbitrary<UnitOfMeasure> unitsLike(UnitOfMeasure unit) {
        return Arbitraries.of(
                UnitOfMeasure.words().stream().map(UnitOfMeasure::of).filter(unit::sameDimension).toList());
    }

    static Arbitrary<Quantity> quantities() {
        return Combinators.combine(decimals(), units()).as(Quantity::new);
    }

    static Arbitrary<Pair> pairs() {
        return quantities().flatMap(one -> Combinators.combine(decimals(), unitsLike(one.unit()))
                .as((value, unit) -> new Pair(one, new Quantity(value, unit))));
    }

    private static BigDecimal plain(BigDecimal number) {
        return number.scale() < 0 ? number.setScale(0) : number;
    }

    /** Two quantities of one dimension. */
    record Pair(Quantity one, Quantity other) {
    }
}
