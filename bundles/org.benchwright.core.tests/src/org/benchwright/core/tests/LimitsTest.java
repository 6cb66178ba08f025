package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimitsTest {

    /**
     * Supply ranges of EN/IEC 61131-2, table of rated values: 24 V DC -15 %/+20 %; AC -15 %/+10 %; frequency -5 %/+5 %.
     * Status: from memory (edition to be checked by whoever holds it).
     */
    @ParameterizedTest
    @CsvSource({
        "24, V, 15, 20, 20.4 .. 28.8 V", "120, V, 15, 10, 102 .. 132 V", "230, V, 15, 10, 195.5 .. 253 V",
        "50, Hz, 5, 5, 47.5 .. 52.5 Hz", "60, Hz, 5, 5, 57 .. 63 Hz" })
    void supplyRangesOfIec61131(String number, String unit, BigDecimal minus, BigDecimal plus, String expected) {
        assertEquals(expected, Limits.around(Quantity.of(number, unit), minus, plus).toString());
    }

    @Test
    void aPercentageOfANegativeNominalIsOfItsSize() {
        Limits limits = Limits.around(Quantity.of("-5", "V"), new BigDecimal("10"), new BigDecimal("20"));
        assertEquals("-5.5 .. -4 V", limits.toString());
        assertFalse(limits.inverted());
    }

    @Test
    void refusesPercentagesThatMeanNothing() {
        BigDecimal ten = BigDecimal.TEN;
        assertEquals("A percentage of 20 degC has no meaning; give both limits.",
                assertThrows(IllegalArgumentException.class, () -> Limits.around(Quantity.of("20", "degC"), ten, ten))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> Limits.around(Quantity.of("24", "V"), ten.negate(), ten));
        assertThrows(IllegalArgumentException.class, () -> Limits.around(Quantity.of("24", "V"), ten, ten.negate()));
    }

    @ParameterizedTest
    @CsvSource({
        "23.5, true", "23.50, true", "24.5, true", "23.4999999999999999999, false", "24.5000000000000000001, false",
        "24, true" })
    void aQuantityOnALimitKeepsIt(String volts, boolean kept) {
        Limits limits = Limits.between(Quantity.of("23.5", "V"), Quantity.of("24500", "mV"));
        assertEquals(kept, limits.contains(Quantity.of(volts, "V")));
        assertEquals(kept, limits.contains(Quantity.of(volts, "V").to(UnitOfMeasure.of("uV"))));
    }

    @Test
    void oneSideMayBeOpen() {
        assertTrue(Limits.atMost(Quantity.of("5", "V")).contains(Quantity.of("-1000", "kV")));
        assertFalse(Limits.atMost(Quantity.of("5", "V")).contains(Quantity.of("5001", "mV")));
        assertTrue(Limits.atLeast(Quantity.of("3", "V")).contains(Quantity.of("3", "V")));
        assertFalse(Limits.atLeast(Quantity.of("3", "V")).contains(Quantity.of("2999", "mV")));
        assertEquals("Limits need a lower or an upper side.",
                assertThrows(IllegalArgumentException.class,
                        () -> new Limits(Optional.empty(), Optional.empty())).getMessage());
    }

    @Test
    void speaksPlainly() {
        assertEquals("23.5 .. 24.50 V", Limits.between(Quantity.of("23.5", "V"), Quantity.of("24.50", "V")).toString());
        assertEquals("900 mV .. 1.2 V", Limits.between(Quantity.of("900", "mV"), Quantity.of("1.2", "V")).toString());
        assertEquals("at most 5 V", Limits.atMost(Quantity.of("5", "V")).toString());
        assertEquals("at least 3 V", Limits.atLeast(Quantity.of("3", "V")).toString());
        assertEquals("mV", Limits.between(Quantity.of("900", "mV"), Quantity.of("1.2", "V")).unit().word());
        assertEquals("V", Limits.atMost(Quantity.of("5", "V")).unit().word());
    }

    @Test
    void invertedLimitsCanBeRemarkedOn() {
        Limits limits = Limits.between(Quantity.of("1", "V"), Quantity.of("999", "mV"));
        assertTrue(limits.inverted());
        assertFalse(limits.contains(Quantity.of("1", "V")));
        assertFalse(Limits.between(Quantity.of("1", "V"), Quantity.of("1000", "mV")).inverted());
        assertFalse(Limits.atMost(Quantity.of("1", "V")).inverted());
    }

    @Test
    void refusesToMixDimensions() {
        assertThrows(IllegalArgumentException.class,
                () -> Limits.between(Quantity.of("1", "V"), Quantity.of("2", "A")));
        assertThrows(IllegalArgumentException.class,
                () -> Limits.atMost(Quantity.of("1", "V")).contains(Quantity.of("1", "A")));
    }
}
