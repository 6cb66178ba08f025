package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Locale;

import org.benchwright.core.Durations;
import org.benchwright.core.LampColour;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.QuantityFormatException;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.core.Verdict;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** German swaps point and comma, Turkish has a dotless i, Arabic and Hindi have digits of their own. */
class LocaleTest {

    private final Locale before = Locale.getDefault();

    @AfterEach
    void restore() {
        Locale.setDefault(before);
    }

    @ParameterizedTest
    @ValueSource(strings = { "de-DE", "tr-TR", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva", "en-US" })
    void nothingDependsOnTheMachinesLanguage(String tag) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertEquals("1234.50 V", Quantity.parse("1234.50 V").toString());
        assertEquals("1234.50 V", Quantity.parse("1234,50 V").toString());
        assertEquals("23.9 V", Quantity.of("23900", "mV").to(UnitOfMeasure.of("V")).toString());
        assertEquals("20.4 .. 28.8 V",
                Limits.around(Quantity.of("24", "V"), new BigDecimal("15"), new BigDecimal("20")).toString());
        assertEquals("1 h 30 min", Durations.words(Durations.parse("pt90m")));
        assertEquals("1.5 s", Durations.words(Duration.ofMillis(1500)));
        assertEquals("5 min", Durations.words(Durations.parse("5 min")));
        assertEquals(LampColour.WHITE, LampColour.find("white").orElseThrow());
        assertEquals(SignalWord.CAUTION, SignalWord.find("caution").orElseThrow());
        assertEquals("technician", Role.TECHNICIAN.word());
        assertEquals("undecided", Verdict.UNDECIDED.word());
        assertEquals("flashing 1.5 Hz tolerance 20 %", LampPattern.parse("flashing 1.5 Hz tolerance 20 %").words());
        var refused = assertThrows(QuantityFormatException.class, () -> Quantity.parse("5 MIN"));
        assertEquals("5 min", refused.example());
        var tooLong = assertThrows(QuantityFormatException.class, () -> Quantity.parse("1".repeat(41)));
        assertEquals("The entry is longer than 40 characters. Write for example: 23.9 V", tooLong.getMessage());
    }
}
