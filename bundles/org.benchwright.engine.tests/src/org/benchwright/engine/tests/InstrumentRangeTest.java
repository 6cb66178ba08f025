package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.benchwright.core.Quantity;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.api.Test;

/** What an accuracy statement comes to at a reading. */
class InstrumentRangeTest implements PropertyTest {

    private static final BigDecimal TWO = BigDecimal.valueOf(2);
    private static final InstrumentRange LIMITS_OF_ERROR = Parts.reads("0", "60", "dc");
    private static final InstrumentRange STATED_FOR_TWO = Parts.reads("0", "60", "dc", Optional.of(TWO));

    private static void expanded(String volts, InstrumentRange range, Quantity reading, BigDecimal wanted) {
        Quantity told = range.expanded(reading, wanted);
        assertTrue(told.sameSize(Quantity.of(volts, "V")), told::toString);
    }

    /** 0.05 % of 24 V is 12 mV, two digits are 20 mV: 32 mV; by the square root of 3 and k = 2 that is 36.95 mV, rounded up. */
    @Test
    void limitsOfErrorAreSpreadEvenly() {
        assertEquals(Quantity.of("0.032", "V"), LIMITS_OF_ERROR.halfWidth(Quantity.of("24", "V")));
        expanded("0.0370", LIMITS_OF_ERROR, Quantity.of("24.00", "V"), TWO);
    }

    @Test
    void aStatedCoverageFactorIsTakenAsItIs() {
        expanded("0.032", STATED_FOR_TWO, Quantity.of("24", "V"), TWO);
        expanded("0.048", STATED_FOR_TWO, Quantity.of("24000", "mV"), BigDecimal.valueOf(3));
    }

    @Test
    void aRangeCoversItsEndsAndNothingElse() {
        assertTrue(LIMITS_OF_ERROR.covers(Quantity.of("60000", "mV")));
        assertTrue(LIMITS_OF_ERROR.covers(Quantity.of("0", "V")));
        assertFalse(LIMITS_OF_ERROR.covers(Quantity.of("60.001", "V")));
        assertFalse(LIMITS_OF_ERROR.covers(Quantity.of("-0.1", "V")));
        assertFalse(LIMITS_OF_ERROR.covers(Quantity.of("1", "A")));
    }

    @Test
    void itIsToldInWords() {
        assertEquals("reads 0 V to 60 V dc, 0.05 % of reading + 2 digits of 0.01 V, k 2", STATED_FOR_TWO.words());
    }

    /** More away from zero is never more certain, the sign says nothing, and the unit of the reading neither. */
    @Property
    boolean moreIsNeverMoreCertain(@ForAll @IntRange(min = 0, max = 60_000) int a, @ForAll @IntRange(min = 0, max = 60_000) int b) {
        Quantity small = LIMITS_OF_ERROR.expanded(Quantity.of(String.valueOf(Math.min(a, b)), "mV"), TWO);
        Quantity large = LIMITS_OF_ERROR.expanded(Quantity.of(String.valueOf(Math.max(a, b)), "mV"), TWO);
        Quantity negative = LIMITS_OF_ERROR.expanded(Quantity.of(String.valueOf(-Math.max(a, b)), "mV"), TWO);
        Quantity inVolts = LIMITS_OF_ERROR.expanded(Quantity.of(BigDecimal.valueOf(Math.max(a, b)).movePointLeft(3).toPlainString(), "V"), TWO);
        return small.compareTo(large) <= 0 && negative.equals(large) && inVolts.compareTo(large) == 0;
    }

    /** Rounding is up, and by less than one percent. */
    @Property
    boolean itIsRoundedUpALittle(@ForAll @IntRange(min = 0, max = 60_000) int millivolts) {
        Quantity reading = Quantity.of(String.valueOf(millivolts), "mV");
        double exact = LIMITS_OF_ERROR.halfWidth(reading).value().doubleValue() * 2 / Math.sqrt(3);
        double told = LIMITS_OF_ERROR.expanded(reading, TWO).value().doubleValue();
        return told >= exact * (1 - 1e-12) && told <= exact * 1.01 + 1e-12;
    }
}
