package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Optional;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampColour.Aspect;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LampTest {

    /** IEC 60073, meaning of indicator colours as an extract on a public page gives it. */
    @ParameterizedTest
    @CsvSource({ "red, danger, emergency, faulty", "yellow, warning, abnormal, abnormal",
        "green, safe, normal, normal", "blue, mandatory action, mandatory action, mandatory action",
        "white, no specific meaning, no specific meaning, no specific meaning" })
    void coloursMeanWhatIec60073Says(String word, String safety, String process, String equipment) {
        LampColour colour = LampColour.find(word).orElseThrow();
        assertEquals(safety, colour.meaning(Aspect.SAFETY));
        assertEquals(process, colour.meaning(Aspect.PROCESS));
        assertEquals(equipment, colour.meaning(Aspect.EQUIPMENT));
        assertEquals(word, colour.word());
        assertEquals(word, colour.label());
    }

    /** IEC 60073:2002: slow 24 to 48 flashes per minute, normal 84 to 168; read in secondary texts only. */
    @ParameterizedTest
    @CsvSource({ "24, true, false", "48, true, false", "23.9, false, false", "48.1, false, false", "83.9, false, false",
        "84, false, true", "168, false, true", "168.1, false, false", "60, false, false", "0, false, false" })
    void flashBandsAreThoseOfIec60073(String perMinute, boolean slow, boolean normal) {
        Quantity rate = Quantity.of(perMinute, "rpm");
        assertEquals(slow, new FlashRate.Slow().accepts(rate));
        assertEquals(normal, new FlashRate.Normal().accepts(rate));
        assertEquals(rate.value().signum() > 0, new FlashRate.Any().accepts(rate));
    }

    @Test
    void aStatedRateHasItsTolerance() {
        FlashRate rate = new FlashRate.Around(Quantity.of("1", "Hz"), new BigDecimal("20"));
        assertEquals("0.8 .. 1.2 Hz", rate.band().orElseThrow().toString());
        assertTrue(rate.accepts(Quantity.of("1.2", "Hz")));
        assertFalse(rate.accepts(Quantity.of("1.21", "Hz")));
        assertEquals(Optional.empty(), new FlashRate.Any().band());
    }

    @Test
    void refusesRatesThatNoLampHas() {
        BigDecimal twenty = new BigDecimal("20");
        assertThrows(IllegalArgumentException.class, () -> new FlashRate.Around(Quantity.of("1", "V"), twenty));
        assertThrows(IllegalArgumentException.class, () -> new FlashRate.Around(Quantity.of("0", "Hz"), twenty));
        assertThrows(IllegalArgumentException.class, () -> new FlashRate.Around(Quantity.of("-1", "Hz"), twenty));
        BigDecimal hundred = new BigDecimal("100");
        assertThrows(IllegalArgumentException.class, () -> new FlashRate.Around(Quantity.of("1", "Hz"), hundred));
        BigDecimal negative = new BigDecimal("-1");
        assertThrows(IllegalArgumentException.class, () -> new FlashRate.Around(Quantity.of("1", "Hz"), negative));
        assertThrows(IllegalArgumentException.class, () -> new FlashRate.Slow().accepts(Quantity.of("1", "V")));
    }

    @ParameterizedTest
    @ValueSource(strings = { "off", "steady", "flashing", "flashing slow", "flashing normal",
        "flashing 1 Hz tolerance 20 %", "flashing 1.50 Hz tolerance 0.5 %", "flashing 60 rpm tolerance 0 %" })
    void patternsAreReadBack(String words) {
        assertEquals(words, LampPattern.parse(words).words());
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "on", "Off", "flashing fast", "flashing 1 Hz", "flashing 1 V tolerance 20 %",
        "flashing 1 Hz tolerance 200 %", "steady slow" })
    void otherWordsAreNoPattern(String words) {
        assertThrows(IllegalArgumentException.class, () -> LampPattern.parse(words));
    }
}
