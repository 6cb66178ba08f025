package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

    /** The SI prefixes and the definitions of min, h, d, degC, bar and % (SI brochure, 9th edition, tables 7 and 8). */
    @ParameterizedTest
    @CsvSource({
        "23900, mV, V, 23.9", "23.9, V, mV, 23900", "23.90, V, uV, 23900000", "1, kV, mV, 1000000",
        "-0.016, mA, uA, -16", "4.7, kohm, Mohm, 0.0047", "1, Mohm, mohm, 1000000000", "72, h, s, 259200",
        "3, d, h, 72", "90, s, min, 1.5", "250, ms, s, 0.25", "23.5, degC, K, 296.65", "296.65, K, degC, 23.5",
        "0, K, degC, -273.15", "-40, degC, mK, 233150", "15, %, ppm, 150000", "150, rpm, Hz, 2.5",
        "1.2, bar, mbar, 1200", "1, bar, kPa, 100", "1013.25, hPa, Pa, 101325", "225, mAh, Ah, 0.225",
        "100, g, kg, 0.1", "2.5, Wh, J, 9000", "0, V, mV, 0", "470, nF, uF, 0.47", "50, Hz, kHz, 0.05" })
    void convertsExactly(String number, String from, String to, String expected) {
        assertEquals(expected + " " + to, Quantity.of(number, from).to(UnitOfMeasure.of(to)).toString());
        assertEquals(0, new BigDecimal(expected).compareTo(Quantity.of(number, from).exactIn(UnitOfMeasure.of(to))));
        assertEquals(Double.parseDouble(expected), Quantity.of(number, from).in(UnitOfMeasure.of(to)));
    }

    @Test
    void anEndlessResultIsRoundedForShowingAndRefusedForDeciding() {
        Quantity tenSeconds = Quantity.of("10", "s");
        assertEquals("0.002777777777777777777777777777777778 h", tenSeconds.to(UnitOfMeasure.of("h")).toString());
        assertThrows(ArithmeticException.class, () -> tenSeconds.exactIn(UnitOfMeasure.of("h")));
    }

    @Test
    void keepsTheDigitsThatWereWritten() {
        assertEquals("23.90 V", Quantity.of("23.90", "V").toString());
        assertEquals("23.90", Quantity.of("23.90", "V").number());
        assertEquals("1000 V", new Quantity(new BigDecimal("1E+3"), UnitOfMeasure.of("V")).toString());
        assertEquals("23.90 V", Quantity.of("23.90", "V").to(UnitOfMeasure.of("V")).toString());
        assertNotEquals(Quantity.of("23.9", "V"), Quantity.of("23.90", "V"));
        assertTrue(Quantity.of("23.9", "V").sameSize(Quantity.of("23.90", "V")));
    }

    @Test
    void comparesWithoutRoundingWhateverTheUnits() {
        assertTrue(Quantity.of("1", "h").sameSize(Quantity.of("3600", "s")));
        assertTrue(Quantity.of("10", "s").compareTo(Quantity.of("0.00277777777777777777777777777777777777778", "h")) < 0);
        assertTrue(Quantity.of("10", "s").compareTo(Quantity.of("0.00277777777777777777777777777777777777777", "h")) > 0);
        assertTrue(Quantity.of("0", "degC").sameSize(Quantity.of("273.15", "K")));
        assertTrue(Quantity.of("0", "degC").compareTo(Quantity.of("273.1500001", "K")) < 0);
    }

    @Test
    void refusesToMixDimensions() {
        Quantity volts = Quantity.of("1", "V");
        Quantity amperes = Quantity.of("1", "A");
        var words = assertThrows(IllegalArgumentException.class, () -> volts.compareTo(amperes)).getMessage();
        assertEquals("V and A measure different things and can't be compared.", words);
        assertThrows(IllegalArgumentException.class, () -> volts.plus(amperes));
        assertThrows(IllegalArgumentException.class, () -> volts.minus(amperes));
        assertThrows(IllegalArgumentException.class, () -> volts.to(UnitOfMeasure.of("A")));
        assertThrows(IllegalArgumentException.class, () -> volts.in(UnitOfMeasure.of("%")));
    }

    @Test
    void tellsPointsOnAScaleFromDifferences() {
        Quantity room = Quantity.of("20.0", "degC");
        assertEquals("23.0 degC", room.plus(Quantity.of("3", "K")).toString());
        assertEquals("17.0 degC", room.minus(Quantity.of("3", "K")).toString());
        assertEquals("20.25 degC", room.plus(Quantity.of("250", "mK")).toString());
        assertEquals("5.0 K", Quantity.of("25", "degC").minus(room).toString());
        assertEquals("5.00 K", Quantity.of("298.15", "K").minus(room).toString());
        var words = assertThrows(IllegalArgumentException.class, () -> room.plus(Quantity.of("3", "degC"))).getMessage();
        assertTrue(words.contains("3 degC") && words.contains("K"), words);
    }

    @Test
    void addsInItsOwnUnit() {
        assertEquals("24.5 V", Quantity.of("24", "V").plus(Quantity.of("500", "mV")).toString());
        assertEquals("-0.5 V", Quantity.of("0", "V").minus(Quantity.of("500", "mV")).toString());
        assertEquals("-24.0 V", Quantity.of("24.0", "V").negate().toString());
    }

    @Test
    void refusesNumbersThatWouldFillTheMemory() {
        UnitOfMeasure volt = UnitOfMeasure.of("V");
        assertThrows(IllegalArgumentException.class, () -> new Quantity(new BigDecimal("1E+999999999"), volt));
        assertThrows(IllegalArgumentException.class, () -> new Quantity(new BigDecimal("1E-999999999"), volt));
        assertThrows(IllegalArgumentException.class, () -> new Quantity(new BigDecimal("0E+999999999"), volt));
    }

    @Test
    void hasNoOffsetInAnyUnitButDegC() {
        for (String word : UnitOfMeasure.words()) {
            UnitOfMeasure unit = UnitOfMeasure.of(word);
            assertEquals(word.equals("degC"), unit.hasOffset(), word);
            assertFalse(unit.forDifferences().hasOffset(), word);
            assertTrue(unit.forDifferences().sameDimension(unit), word);
        }
    }
}
