package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import java.util.Random;
import org.benchwright.ledger.internal.InstantText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Instants are read as the platform reads them, and in the one form only in which it writes them. */
class InstantTextTest {

    @Test
    void readsWhatThePlatformWrites() {
        Random random = new Random(8601);
        for (int i = 0; i < 20_000; i++) {
            int nanos = switch (random.nextInt(4)) {
                case 0 -> 0;
                case 1 -> random.nextInt(1000) * 1_000_000;
                case 2 -> random.nextInt(1_000_000) * 1000;
                default -> random.nextInt(1_000_000_000);
            };
            Instant instant = Instant.ofEpochSecond(random.nextLong(-70_000_000_000L, 260_000_000_000L), nanos);
            assertEquals(Optional.of(instant), InstantText.read(instant.toString()), instant.toString());
        }
    }

    @Test
    void takesAChangedTextExactlyWhenThePlatformWritesItSo() {
        Random random = new Random(3339);
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder(Instant.ofEpochSecond(random.nextLong(4_000_000_000L), random.nextInt(1000) * 1_000_000L)
                    .toString());
            text.setCharAt(random.nextInt(text.length()), "0123456789-:.TZtz+ ".charAt(random.nextInt(19)));
            assertEquals(slowly(text.toString()), InstantText.read(text.toString()), text.toString());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Z", "2026-03-02T07:30:00", "2026-03-02T07:30:00.Z", "2026-03-02T07:30:00.000Z", "2026-03-02T07:30:00.500000Z",
        "2026-03-02T07:30:00.5Z", "2026-03-02T07:30Z", "2026-02-29T00:00:00Z", "2024-02-29T00:00:00Z", "2026-04-31T00:00:00Z", "2026-12-31T23:59:60Z",
        "2026-12-31T24:00:00Z", "2026-13-01T00:00:00Z", "2026-00-01T00:00:00Z", "2026-03-00T00:00:00Z", "+10000-01-01T00:00:00Z",
        "-0001-01-01T00:00:00Z", "2026-03-02t07:30:00z", "2026-03-02T07:30:00+00:00", "\u0662026-03-02T07:30:00Z"})
    void oddTextsAreReadAsThePlatformReadsThem(String text) {
        assertEquals(slowly(text), InstantText.read(text));
    }

    private static Optional<Instant> slowly(String text) {
        try {
            return Optional.of(Instant.parse(text)).filter(instant -> instant.toString().equals(text));
        } catch (DateTimeException malformed) {
            return Optional.empty();
        }
    }
}
