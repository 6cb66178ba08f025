package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One unit through another: rates, slopes and ratios. */
class QuotientUnitsTest {

    @ParameterizedTest
    @CsvSource({ "2.5 mV/K, V/K, 0.0025", "3 V/ms, kV/s, 3", "1 A/us, mA/s, 1000000000", "36 m/h, m/s, 0.01", "2 mV/V, %, 0.2", "1 V/A, ohm, 1",
            "1 W/V, A, 1", "7 m/s, m/min, 420" })
    void itIsConvertedAsItsParts(String from, String to, String expected) {
        assertEquals(0, new BigDecimal(expected).compareTo(Quantity.parse(from).to(UnitOfMeasure.of(to)).value()), () -> from + " in " + to);
    }

    @ParameterizedTest
    @ValueSource(strings = { "degC/s", "V/degC", "V/x", "x/V", "V/", "/V", "V//s", "V/s/s", "/", "" })
    void whatIsNoUnitIsNone(String word) {
        assertEquals(Optional.empty(), UnitOfMeasure.find(word));
    }

    @Test
    void itsDimensionIsChecked() {
        assertTrue(UnitOfMeasure.of("mV/K").sameDimension(UnitOfMeasure.of("V/mK")));
        assertFalse(UnitOfMeasure.of("mV/K").sameDimension(UnitOfMeasure.of("V/s")));
        Quantity slope = Quantity.parse("1 V/s");
        UnitOfMeasure volt = UnitOfMeasure.of("V");
        assertThrows(IllegalArgumentException.class, () -> slope.to(volt));
    }

    @Test
    void itIsOneWordThatFindsItAgain() {
        UnitOfMeasure unit = UnitOfMeasure.of("\u00b5V/K");
        assertEquals("uV/K", unit.word());
        assertEquals(unit, UnitOfMeasure.of(unit.word()));
        assertEquals("2.5 uV/K", Quantity.parse("2.5 \u00b5V/K").toString());
    }
}
