package org.benchwright.ledger.internal;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Instants as the ledger writes them: {@link Instant#toString}, in that form only. The usual shape is read by itself, since the general
 * reading of the platform takes a good part of the time of a verification; anything else is left to the platform and compared.
 */
public final class InstantText {

    private static final String SHAPE = "0000-00-00T00:00:00";
    private static final int SECONDS_A_DAY = 86_400;
    /** No month is shorter. */
    private static final int SAFE_DAY = 28;

    private InstantText() {
    }

    /** The instant, when {@code text} is exactly what would be written for it. */
    public static Optional<Instant> read(String text) {
        return usual(text) ? Optional.of(instant(text)) : byThePlatform(text);
    }

    private static Optional<Instant> byThePlatform(String text) {
        try {
            return Optional.of(Instant.parse(text)).filter(instant -> instant.toString().equals(text));
        } catch (DateTimeException malformed) {
            return Optional.empty();
        }
    }

    private static boolean usual(String text) {
        int end = text.length() - 1;
        if (end < SHAPE.length() || text.charAt(end) != 'Z') {
            return false;
        }
        for (int i = 0; i < SHAPE.length(); i++) {
            char wanted = SHAPE.charAt(i);
            char found = text.charAt(i);
            if (wanted == '0' ? found < '0' || found > '9' : found != wanted) {
                return false;
            }
        }
        return within(text, 5, 1, 12) && within(text, 8, 1, SAFE_DAY) && within(text, 11, 0, 23) && within(text, 14, 0, 59)
                && within(text, 17, 0, 59) && usualFraction(text, SHAPE.length(), end);
    }

    private static boolean within(String text, int at, int least, int most) {
        int number = number(text, at, at + 2);
        return number >= least && number <= most;
    }

    /** Nothing, or a dot and three, six or nine digits, the last three of them not all nought. */
    private static boolean usualFraction(String text, int begin, int end) {
        if (begin == end) {
            return true;
        }
        int digits = end - begin - 1;
        if (text.charAt(begin) != '.' || digits != 3 && digits != 6 && digits != 9) {
            return false;
        }
        for (int i = begin + 1; i < end; i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return number(text, end - 3, end) != 0;
    }

    private static Instant instant(String text) {
        long day = LocalDate.of(number(text, 0, 4), number(text, 5, 7), number(text, 8, 10)).toEpochDay();
        int second = (number(text, 11, 13) * 60 + number(text, 14, 16)) * 60 + number(text, 17, 19);
        int nanos = 0;
        int begin = SHAPE.length() + 1;
        for (int i = 0; i < 9 && begin < text.length(); i++) {
            nanos = nanos * 10 + (begin + i < text.length() - 1 ? text.charAt(begin + i) - '0' : 0);
        }
        return Instant.ofEpochSecond(day * SECONDS_A_DAY + second, nanos);
    }

    private static int number(String text, int begin, int end) {
        int number = 0;
        for (int i = begin; i < end; i++) {
            number = number * 10 + text.charAt(i) - '0';
        }
        return number;
    }
}
