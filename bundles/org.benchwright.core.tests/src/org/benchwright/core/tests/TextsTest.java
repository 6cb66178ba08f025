package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;

import org.benchwright.core.Texts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The files beside this class: English, and German for one of the texts. */
class TextsTest {

    private final Locale before = Locale.getDefault();
    private final Texts shown = Texts.beside(TextsTest.class, "texts");
    private final Texts kept = Texts.fixed(TextsTest.class, "texts");

    @AfterEach
    void languageAsItWas() {
        Locale.setDefault(before);
    }

    @Test
    void whatIsShownFollowsTheMachineAndWhatIsKeptDoesNot() {
        Locale.setDefault(Locale.GERMANY);
        assertEquals("Einheit C16", shown.text("UNIT", "C16"));
        assertEquals("unit C16", kept.text("UNIT", "C16"));
        Locale.setDefault(Locale.UK);
        assertEquals("unit C16", shown.text("UNIT", "C16"));
    }

    @Test
    void aTextThatIsNotTranslatedIsEnglish() {
        Locale.setDefault(Locale.GERMANY);
        assertEquals("2 units", shown.text("COUNT", 2));
        assertEquals("1 unit", shown.text("COUNT", 1));
    }

    @Test
    void numbersLookTheSameInEveryLanguageAndPlainOnesHaveNoMarks() {
        Locale.setDefault(Locale.GERMANY);
        assertEquals("unit 12,345", kept.text("UNIT", 12345));
        assertEquals("unit 12345", kept.plain("UNIT", 12345));
        assertEquals("unit 0.123456", kept.plain("UNIT", 0.123456));
    }

    @Test
    void whatIsNotThereIsSaid() {
        assertEquals(Optional.empty(), shown.find("NOTHING"));
        assertEquals(Optional.of("unit {0}"), kept.find("UNIT"));
        assertThrows(MissingResourceException.class, () -> shown.text("NOTHING"));
        assertTrue(shown.keys().contains("COUNT"));
    }
}
