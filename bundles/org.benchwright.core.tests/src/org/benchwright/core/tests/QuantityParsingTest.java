package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.UnitOfMeasure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityParsingTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "24 V|24 V", "24V|24 V", "'23,9V'|23.9 V", "'23,90 V'|23.90 V", "-0.016 mA|-0.016 mA", "+20 %|20 %",
        "20%|20 %", "' 24 V '|24 V", "007 V|7 V", "1,234 V|1.234 V", "-40 degC|-40 degC", "3 m/s|3 m/s",
        "24\u00a0V|24 V", "24\u202fV|24 V", "\u22125 mA|-5 mA", "5 \u00b5A|5 uA", "5 \u03bcA|5 uA",
        "10 k\u03a9|10 kohm", "10 k\u2126|10 kohm", "21 \u00b0C|21 degC", "0 V|0 V", "-0 V|0 V" })
    void reads(String text, String expected) {
        assertEquals(expected, Quantity.parse(text).toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "''|EMPTY", "'   '|EMPTY", "V|NOT_A_NUMBER", "NaN V|NOT_A_NUMBER", "Infinity V|NOT_A_NUMBER",
        "+-5 V|NOT_A_NUMBER", "- 5 V|NOT_A_NUMBER", ", V|NOT_A_NUMBER", "=24 V|NOT_A_NUMBER",
        "\u0664 V|NOT_A_NUMBER", "1.234.5 V|TWO_SEPARATORS", "1,234.5 V|TWO_SEPARATORS", "1.234,5 V|TWO_SEPARATORS",
        "24,,5 V|TWO_SEPARATORS", "1 234 V|GROUPED_DIGITS", "1\u00a0234 V|GROUPED_DIGITS", "1'234 V|GROUPED_DIGITS",
        "1\u2019234.5 V|GROUPED_DIGITS", ".5 V|BARE_SEPARATOR", "5. V|BARE_SEPARATOR", "-,5 V|BARE_SEPARATOR",
        "24|NO_UNIT", "24.5|NO_UNIT", "24 v|UNKNOWN_UNIT", "24 furlong|UNKNOWN_UNIT", "1e3 V|UNKNOWN_UNIT",
        "24 V dc|UNKNOWN_UNIT", "0x10 V|UNKNOWN_UNIT", "24  V|UNKNOWN_UNIT", "1234567890123456789012345678901234567890 V|TOO_LONG" })
    void refusesWithAReason(String text, QuantityFormatException.Problem problem) {
        QuantityFormatException refused = assertThrows(QuantityFormatException.class, () -> Quantity.parse(text));
        assertEquals(problem, refused.problem(), refused.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "V", "1.2.3 V", "1 234 V", ".5 V", "24", "24 v", "24 furlong", "1e3 V", "-3 volts" })
    void theExampleInARefusalWorks(String text) {
        QuantityFormatException refused = assertThrows(QuantityFormatException.class, () -> Quantity.parse(text));
        assertTrue(refused.getMessage().endsWith("Write for example: " + refused.example()), refused.getMessage());
        assertEquals(refused.example(), Quantity.parse(refused.example()).toString());
    }

    @Test
    void guessesAtAUnitOfTheOtherCase() {
        QuantityFormatException refused = assertThrows(QuantityFormatException.class, () -> Quantity.parse("24 v"));
        assertEquals("\"v\" is not a known unit of measure; perhaps V was meant. Write for example: 24 V",
                refused.getMessage());
        refused = assertThrows(QuantityFormatException.class,
                () -> Quantity.parse("5 KOHM", UnitOfMeasure.of("ohm")));
        assertEquals("5 kohm", refused.example());
    }

    @Test
    void takesABareNumberInTheAssumedUnit() {
        UnitOfMeasure volt = UnitOfMeasure.of("V");
        assertEquals("23.90 V", Quantity.parse("23,90", volt).toString());
        assertEquals("23900 mV", Quantity.parse("23900 mV", volt).toString());
        var refused = assertThrows(QuantityFormatException.class, () -> Quantity.parse("5 mA", volt));
        assertEquals(QuantityFormatException.Problem.OTHER_DIMENSION, refused.problem());
        assertEquals("\"5 mA\" is not a quantity that can be given in V. Write for example: 5 V", refused.getMessage());
        var empty = assertThrows(QuantityFormatException.class, () -> Quantity.parse("", UnitOfMeasure.of("mA")));
        assertEquals("23.9 mA", empty.example());
    }

    @Test
    void wordsAreFoundCaseSensitively() {
        assertTrue(UnitOfMeasure.find("mV").isPresent());
        assertTrue(UnitOfMeasure.find("mv").isEmpty());
        assertTrue(UnitOfMeasure.find("").isEmpty());
        assertTrue(UnitOfMeasure.find("v").isEmpty());
        assertEquals("\"volt\" is not a known unit of measure.",
                assertThrows(IllegalArgumentException.class, () -> UnitOfMeasure.of("volt")).getMessage());
        assertThrows(UnsupportedOperationException.class, () -> UnitOfMeasure.words().remove("V"));
    }
}
