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
import org.benchwright.engine.instrument.InstrumentUse;
import org.benchwright.testkit.PropertyTest;
import org.junit.jupiter.api.Test;

/** What an accuracy statement comes to at a reading. */
class InstrumentRangeTest implements PropertyTest {

    private static InstrumentRange volts(Optional<BigDecimal> coverage) {
        return new InstrumentRange(InstrumentUse.READS, "dc", Quantity.of("0", "V"), Quantity.of("60", "V"), new BigDecimal("0.05"), new BigDecimal("2"),
                Quantity.of("0.01", "V"), coverage);
    }

    /** 0.05 % of 24 V is 12 mV, two digits are 20 mV: 32 mV; by the square root of 3 and k = 2 that is 36.95 mV, rounded up. */
    @Test
    void limitsOfErrorAreSpreadEvenly() {
        assertEquals(Quantity.of("0.032", "V"), volts(Optional.empty()).halfWidth(Quantity.of("24", "V")));
        assertEquals(Quantity.of("0.0370", "V").value().stripTrailingZeros(), volts(Optional.empty()).expanded(Quantity.of("24.00", "V"), BigDecimal.valueOf(2)).value().stripTrailingZeros());
    }

    @Test
    void aStatedCoverageFactorIsTakenAsItIs() {
        assertEquals(0, volts(Optional.of(BigDecimal.valueOf(2))).expanded(Quantity.of("24", "V"), BigDecimal.valueOf(2)).value().compareTo(new BigDecimal("0.032")));
        assertEquals(0, volts(Optional.of(BigDecimal.valueOf(2))).expanded(Quantity.of("24000", "mV"), BigDecimal.valueOf(3)).value().compareTo(new BigDecimal("0.048")));
    }

    @Test
    void aRangeCoversItsEndsAndNothingElse() {
        assertTrue(volts(Optional.empty()).covers(Quantity.of("60000", "mV")));
        assertTrue(volts(Optional.empty()).covers(Quantity.of("0", "V")));
        assertFalse(volts(Optional.empty()).covers(Quantity.of("60.001", "V")));
        assertFalse(volts(Optional.empty()).covers(Quantity.of("-0.1", "V")));
        assertFalse(volts(Optional.empty()).covers(Quantity.of("1", "A")));
    }

    @Test
    void itIsToldInWords() {
        assertEquals("reads 0 V to 60 V dc, 0.05 % of reading + 2 digits of 0.01 V, k 2", volts(Optional.of(BigDecimal.valueOf(2))).words());
    }

    /** More away from zero is never more certain, the sign says nothing, and the unit of the reading neither. */
    @Property
    boolean moreIsNeverMoreCertain(@ForAll @IntRange(min = 0, max = 60_000) int a, @ForAll @IntRange(min = 0, max = 60_000) int b) {
        InstrumentRange range = volts(Optional.empty());
        BigDecimal k = BigDecimal.valueOf(2);
        Quantity small = range.expanded(Quantity.of(String.valueOf(Math.min(a, b)), "mV"), k);
        Quantity large = range.expanded(Quantity.of(String.valueOf(Math.max(a, b)), "mV"), k);
        Quantity negative = range.expanded(Quantity.of(String.valueOf(-Math.max(a, b)), "mV"), k);
        Quantity inVolts = range.expanded(Quantity.of(BigDecimal.valueOf(Math.max(a, b)).movePointLeft(3).toPlainString(), "V"), k);
        return small.compareTo(large) <= 0 && negative.equals(large) && inVolts.compareTo(large) == 0;
    }

    /** Rounding is up, and by less than one percent. */
    @Property
    boolean itIsRoundedUpALittle(@ForAll @IntRange(min = 0, max = 60_000) int millivolts) {
        InstrumentRange range = volts(Optional.empty());
        Quantity reading = Quantity.of(String.valueOf(millivolts), "mV");
        double exact = range.halfWidth(reading).value().doubleValue() * 2 / Math.sqrt(3);
        double told = range.expanded(reading, BigDecimal.valueOf(2)).value().doubleValue();
        return told >= exact * (1 - 1e-12) && told <= exact * 1.01 + 1e-12;
    }
}
