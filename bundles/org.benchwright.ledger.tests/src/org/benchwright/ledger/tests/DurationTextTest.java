package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Offsets of events are read by hand; the platform's own reading and writing judge it. */
class DurationTextTest {

    /** What an event's bytes with that offset are read as. */
    private static Optional<Duration> read(String offset) throws PayloadException {
        Event event = new Event(new TestId("T-22222-22222"), 1, Instant.EPOCH, 1, Duration.ofSeconds(7), new Actor("QN", Role.TECHNICIAN), "noted",
                new Members(Map.of()));
        String text = new String(EventCodec.encode(event)).replace("\"PT7S\"", "\"" + offset + "\"");
        try {
            return Optional.of(EventCodec.decode(text.getBytes()).offset());
        } catch (PayloadException refused) {
            return Optional.empty();
        }
    }

    private static Optional<Duration> slowly(String text) {
        try {
            return Optional.of(Duration.parse(text)).filter(duration -> !duration.isNegative() && duration.toString().equals(text));
        } catch (DateTimeException | ArithmeticException malformed) {
            return Optional.empty();
        }
    }

    private static Duration random(Random random) {
        long seconds = switch (random.nextInt(4)) {
            case 0 -> random.nextInt(60);
            case 1 -> random.nextInt(24) * 3600L;
            case 2 -> random.nextInt(1000) * 60L;
            default -> random.nextLong(10_000_000_000L);
        };
        return Duration.ofSeconds(seconds, random.nextBoolean() ? 0 : random.nextInt(1000) * (random.nextBoolean() ? 1L : 1_000_000L));
    }

    @Test
    void everyDurationComesBack() throws Exception {
        Random random = new Random(5);
        for (int i = 0; i < 20_000; i++) {
            Duration duration = random(random);
            assertEquals(Optional.of(duration), read(duration.toString()), duration.toString());
        }
    }

    @Test
    void aChangedTextIsTakenExactlyWhenThePlatformWritesItSo() throws Exception {
        Random random = new Random(6);
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder(random(random).toString());
            int at = random.nextInt(text.length());
            char other = "0123456789.-+PTDHMSpt".charAt(random.nextInt(21));
            switch (random.nextInt(3)) {
                case 0 -> text.setCharAt(at, other);
                case 1 -> text.insert(at, other);
                default -> text.deleteCharAt(at);
            }
            assertEquals(slowly(text.toString()), read(text.toString()), text.toString());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "P", "PT", "PT0S", "PT00S", "PT1H0", "PT1H0S", "PT1H0M", "PT0H", "PT0M", "PT1.S", "PT.5S", "PT1.50S", "PT0.0S",
        "PT60S",
        "PT60M", "PT1M60S", "PT-1S", "PT+1S", "P1D", "PT1H1M1.000000001S", "PT1.0000000001S", "PT99999999999999999999H", "pt1s", "PT1S ", "PT1H1H"})
    void oddTextsAreReadAsThePlatformReadsThem(String text) throws Exception {
        assertEquals(slowly(text), read(text), text);
    }
}
