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
        "10 k\u03a9|10 kohm", "10 k\u2126|10 kohm", "21 \u00b0C|21 degC", "0 V|0 V", "-0 V|0 V",
        "24  V|24 V", "'24\tV'|24 V", "24\u2009V|24 V", "\u20135 mA|-5 mA", "21 \u2103|21 degC" })
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
        "24|NO_UNIT", "24.5|NO_UNIT", "24 v|UNKNOWN_UNIT", "24 furlong|UNKNOWN_UNIT", "1e3 V|POWER_OF_TEN",
        "24 V dc|UNKNOWN_UNIT", "23.9 V dc|UNKNOWN_UNIT", "23.9 V 24.1 V|UNKNOWN_UNIT", "0x10 V|UNKNOWN_UNIT", "4k7|UNIT_FOR_POINT", "OL|OUT_OF_RANGE",
        "0.L Mohm|OUT_OF_RANGE", "----|OUT_OF_RANGE", "1234567890123456789012345678901234567890 V|TOO_LONG" })
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

    /** Whoever types the example has not entered another size by it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "'1 234,5'|V|1234.5 V", "-1 234.5 mV|V|-1234.5 mV", "1'234'567|ohm|1234567 ohm", "24 23.9|V|23.9 V", "1e3|V|1000 V", "2.39e1 V|V|23.9 V",
        "-5E-3 A|mA|-0.005 A", "1e99|V|23.9 V", "5k1|ohm|5.1 kohm", "4K7|ohm|4.7 kohm", "4R7|ohm|4.7 ohm", "2M2|kohm|2.2 Mohm", "4V7|V|4.7 V", "4k7|V|4.7 kV",
        ".9|V|0.9 V", "'-,5'|V|-0.5 V", "23.|V|23 V", "23.9 VDC|V|23.9 V", "23.9 V dc|V|23.9 V", "230 V ac|V|230 V", "23.9 mVdc|V|23.9 mV", "23.9 A|V|23.9 V",
        "OL|Mohm|23.9 Mohm", "0L|ohm|23.9 ohm", "O.L|ohm|23.9 ohm", "OL MΩ|ohm|23.9 ohm", "over range|V|23.9 V", "> OL|V|23.9 V"})
    void theExampleIsWhatWasMeantWhereThatCanBeTold(String text, String assumed, String example) {
        QuantityFormatException refused = assertThrows(QuantityFormatException.class, () -> Quantity.parse(text, UnitOfMeasure.of(assumed)));
        assertEquals(example, refused.example(), refused.getMessage());
        assertEquals(example, Quantity.parse(example, UnitOfMeasure.of(assumed)).toString());
    }

    @Test
    void whatADisplayShowsBeyondItsRangeIsNoReading() {
        assertEquals("\"OL\" is no reading: it is beyond the range of the instrument. Choose a larger range, and enter what it shows then. Write for example: 23.9 Mohm",
                assertThrows(QuantityFormatException.class, () -> Quantity.parse("OL", UnitOfMeasure.of("Mohm"))).getMessage());
        assertEquals(QuantityFormatException.Problem.NOT_A_NUMBER,
                assertThrows(QuantityFormatException.class, () -> Quantity.parse("old meter", UnitOfMeasure.of("V"))).problem());
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
