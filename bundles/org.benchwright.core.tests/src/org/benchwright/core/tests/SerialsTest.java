package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.benchwright.core.SerialMask;
import org.benchwright.core.SerialNumber;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Serial numbers, and the masks that they must fit. */
class SerialsTest {

    @ParameterizedTest
    @CsvSource({ "C16-######, C16-004711, true", "C16-######, C16-00471, false", "C16-######, C16-0047111, false",
        "C16-######, C16-00471a, false", "C16-######, c16-004711, false", "@@-*, ab-1, true", "@@-*, ab-z, true",
        "@@-*, a1-z, false", "@@-*, ab--, false", "*, '.', false", "A.B, AxB, false", "A.B, A.B, true",
        "'(a+)+#', '(a+)+7', true", "'(a+)+#', 'aaaaaaa', false", "###, \u0661\u0662\u0663, false",
        "@@@, \u00e4\u00f6\u00fc, false" })
    void masksAreNoRegularExpressions(String mask, String serial, boolean accepted) {
        assertEquals(accepted, new SerialMask(mask).accepts(serial));
        assertTrue(new SerialMask(mask).accepts(new SerialMask(mask).example()));
    }

    @ParameterizedTest
    @CsvSource({"c16-004711, C16-004711", "C16 - 004711, C16-004711", "C16\u2013004711, C16-004711", "C16\u2212004711, C16-004711", "]C1C16-004711, C16-004711",
        "\uff2316-004711, C16-004711", "]d2c16-004711C16-004712, C16-004711 C16-004712", "C16-004711C16-004711, C16-004711 C16-004711", "C16-0047111, ''",
        "C16-00471, ''", "P24-004711, ''", "C16-00471O, ''", "C16-004711P24-000001, ''", "'', ''"})
    void aMaskTellsWhatMayHaveBeenMeant(String scanned, String meant) {
        assertEquals(meant, String.join(" ", new SerialMask("C16-######").meant(scanned)));
    }

    @Test
    @Timeout(60)
    void noSerialNumberMakesAMaskSlow() {
        assertFalse(new SerialMask("*".repeat(64)).accepts("a".repeat(10_000_000)));
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "  ", "C16\n###", "C16\u0000", "12345678901234567890123456789012345678901234567890123456789012345" })
    void refusesMasks(String mask) {
        assertThrows(IllegalArgumentException.class, () -> new SerialMask(mask));
    }

    @Test
    void aSerialNumberIsTheSameHoweverItWasScanned() {
        assertEquals(new SerialNumber("C16-004711"), new SerialNumber("  C16-004711\n"));
        assertEquals(new SerialNumber("\u00c5-1"), new SerialNumber("A\u030a-1"));
        assertNotEquals(new SerialNumber("c16-1"), new SerialNumber("C16-1"));
        assertEquals("C16-004711", new SerialNumber("C16-004711").toString());
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "   ", "C16\t1", "C16\u00001", "C16\u001d1", "C16\u202e1", "C16\u2028x", "C16\ud800",
        "12345678901234567890123456789012345678901234567890123456789012345" })
    void refusesSerialNumbers(String text) {
        assertFalse(assertThrows(IllegalArgumentException.class, () -> new SerialNumber(text)).getMessage().isBlank());
    }
}
