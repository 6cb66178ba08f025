package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;

import org.benchwright.core.DurationFormatException;
import org.benchwright.core.Durations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DurationsTest {

    /** ISO 8601 durations, the time-based ones; seconds reckoned by hand (72 x 3600 and so on). */
    @ParameterizedTest
    @CsvSource({ "PT72H, 259200", "P3D, 259200", "PT4320M, 259200", "P2DT3H4M5.5S, 183845.5", "-PT6H+3M, -21780",
        "pt10s, 10", "PT0S, 0" })
    void readsIso8601(String text, String seconds) {
        assertEquals(new BigDecimal(seconds + "e3").longValueExact(), Durations.parse(text).toMillis());
    }

    /** Calendar parts have no fixed length (months, years) or are no part of a time-based duration (weeks). */
    @ParameterizedTest
    @ValueSource(strings = { "P1M", "P1W", "P1DT", "P1Y", "P", "PT", "PT5", "+P", "P1H" })
    void refusesWhatIsNoTimeBasedDuration(String text) {
        String words = assertThrows(DurationFormatException.class, () -> Durations.parse(text)).getMessage();
        assertTrue(words.contains("months, years or weeks"), words);
    }

    @ParameterizedTest
    @CsvSource({ "2 h, PT2H", "2h, PT2H", "72 h, PT72H", "5 min, PT5M", "10 s, PT10S", "250 ms, PT0.25S",
        "2 h 30 min, PT2H30M", "2h 30min, PT2H30M", "'1,5 h', PT1H30M", "1.5 h, PT1H30M", "3 d, PT72H",
        "1 d 12 h, PT36H", "100 us, PT0.0001S", "100 \u00b5s, PT0.0001S", "0 s, PT0S", "-2 h 30 min, PT-2H-30M",
        "0.1 min, PT6S", "1 min 0.000000001 s, PT1M0.000000001S" })
    void readsShopWords(String text, Duration expected) {
        assertEquals(expected, Durations.parse(text));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "''|No length of time was entered.", "12345678901234567890123456789012345678901 s|longer than 40",
        "10|not a length of time", "h|not a length of time", "10 V|not a length of time", "10 H|not a length of time",
        "2 h, 30 min|not a length of time", "1.2.3 s|not a length of time", "2 h 30|not a length of time",
        "5 min 2 h|out of order", "1 h 1 h|out of order", "0.0000000001 s|finer than a nanosecond",
        "1 s 0.0001 us|finer than a nanosecond", "99999999999999999999 h|too long", "PT9999999999999999999999H|too long" })
    void refusesWithAReasonAndAnExample(String text, String reason) {
        DurationFormatException refused = assertThrows(DurationFormatException.class, () -> Durations.parse(text));
        assertTrue(refused.getMessage().contains(reason), refused.getMessage());
        assertTrue(refused.getMessage().endsWith("Write for example: " + refused.example()), refused.getMessage());
        assertEquals(Duration.ofMinutes(150), Durations.parse(refused.example()));
    }

    @ParameterizedTest
    @CsvSource({ "PT72H, 72 h", "PT2H30M, 2 h 30 min", "PT10S, 10 s", "PT90S, 1 min 30 s", "PT0S, 0 s",
        "PT0.25S, 250 ms", "PT1.5S, 1.5 s", "PT1H0.25S, 1 h 0.25 s", "PT1H1S, 1 h 1 s", "PT0.0001S, 0.0001 s",
        "PT-2H-30M, -2 h 30 min", "PT-0.5S, -500 ms", "P3D, 72 h" })
    void speaksShopWords(Duration duration, String expected) {
        assertEquals(expected, Durations.words(duration));
    }

    /** Central European summer time began on 2024-03-31 and ended on 2024-10-27. */
    @Test
    void aSoakOverAClockChangeLastsAsLongAsItLasts() {
        ZoneId berlin = ZoneId.of("Europe/Berlin");
        assertEquals("1 h", Durations.words(Duration.between(LocalDateTime.parse("2024-03-31T01:30").atZone(berlin),
                LocalDateTime.parse("2024-03-31T03:30").atZone(berlin))));
        assertEquals("73 h", Durations.words(Duration.between(LocalDateTime.parse("2024-10-26T12:00").atZone(berlin),
                LocalDateTime.parse("2024-10-29T12:00").atZone(berlin))));
    }

    @Test
    void theExtremesAreAnsweredToo() {
        Duration longest = Duration.ofSeconds(Long.MAX_VALUE, 999_999_999);
        assertEquals(longest, Durations.parse(Durations.words(longest)));
        Duration mostNegative = Duration.ofSeconds(Long.MIN_VALUE);
        assertThrows(IllegalArgumentException.class, () -> Durations.words(mostNegative));
    }
}
