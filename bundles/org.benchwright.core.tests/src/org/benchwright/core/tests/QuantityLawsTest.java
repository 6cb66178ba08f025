package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.tests.Samples.Pair;
import org.benchwright.testkit.PropertyTest;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class QuantityLawsTest implements PropertyTest {

    @Provide
    Arbitrary<BigDecimal> decimals() {
        return Samples.decimals();
    }

    @Provide
    Arbitrary<Quantity> quantities() {
        return Samples.quantities();
    }

    @Provide
    Arbitrary<Pair> pairs() {
        return Samples.pairs();
    }

    @Provide
    Arbitrary<String> scribble() {
        return Arbitraries.strings().withChars("0123456789.,+-' VmAk%eE\u00a0\u0000\ud83d\u20ac\t\u2212\u2019").ofMaxLength(44);
    }

    @Property
    void thereAndBackIsTheSame(@ForAll("pairs") Pair pair) {
        Quantity quantity = pair.one();
        UnitOfMeasure finer = quantity.unit().finer(pair.other().unit());
        assertTrue(quantity.to(finer).to(quantity.unit()).sameSize(quantity));
    }

    @Property
    void theFinerUnitHoldsBothExactly(@ForAll("pairs") Pair pair) {
        Quantity one = pair.one();
        Quantity other = pair.other();
        UnitOfMeasure finer = one.unit().finer(other.unit());
        int expected = one.exactIn(finer).compareTo(other.exactIn(finer));
        assertEquals(Integer.signum(expected), Integer.signum(one.compareTo(other)));
        assertEquals(Integer.signum(-expected), Integer.signum(other.compareTo(one)));
    }

    @Property
    void exactAndRoundedConversionAgree(@ForAll("pairs") Pair pair) {
        UnitOfMeasure target = pair.other().unit();
        double exact = pair.one().unit().finer(target).equals(target)
                ? pair.one().exactIn(target).doubleValue() : pair.one().to(target).value().doubleValue();
        assertEquals(exact, pair.one().in(target), Math.abs(exact) * 1e-15);
    }

    @Property
    void takingAwayUndoesAdding(@ForAll("quantities") Quantity start, @ForAll("decimals") BigDecimal size) {
        Quantity step = new Quantity(size, start.unit().forDifferences());
        assertTrue(start.plus(step).minus(step).sameSize(start));
        assertTrue(start.plus(step).minus(start).sameSize(step));
        assertEquals(size.signum(), Integer.signum(start.plus(step).compareTo(start)));
    }

    @Property
    void limitsHoldWhatLiesBetweenThem(@ForAll("pairs") Pair pair, @ForAll("decimals") BigDecimal number) {
        Quantity low = pair.one().compareTo(pair.other()) <= 0 ? pair.one() : pair.other();
        Quantity high = low == pair.one() ? pair.other() : pair.one();
        Quantity value = new Quantity(number, low.unit());
        Limits limits = Limits.between(low, high);
        assertTrue(limits.contains(low) && limits.contains(high));
        assertEquals(low.compareTo(value) <= 0 && value.compareTo(high) <= 0, limits.contains(value));
        assertEquals(limits.contains(value), Limits.atLeast(low).contains(value) && Limits.atMost(high).contains(value));
    }

    @Property
    void whatIsPrintedIsReadBack(@ForAll("quantities") Quantity quantity) {
        assertEquals(quantity, Quantity.parse(quantity.toString()));
        assertEquals(quantity, Quantity.parse(quantity.number(), quantity.unit()));
        assertEquals(quantity, Quantity.parse(quantity.toString().replace('.', ',').replace(" ", "")));
    }

    @Property(tries = 5000)
    void everyTextIsAQuantityOrRefusedWithAnExampleThatWorks(@ForAll("scribble") String text) {
        try {
            Quantity read = Quantity.parse(text);
            assertEquals(read, Quantity.parse(read.toString()));
        } catch (QuantityFormatException refused) {
            assertDoesNotThrow(() -> Quantity.parse(refused.example()), text);
        }
    }
}
