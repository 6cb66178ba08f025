package org.benchwright.ledger.internal;

import java.time.Duration;
import java.util.Optional;

/** Durations as they are written, {@code PT71H59M1.5S}: read only when the text is exactly what would be written. */
final class DurationText {

    private static final long HOUR = 3600;
    private static final long MINUTE = 60;
    private static final int NANO_DIGITS = 9;
    private static final int MOST_DIGITS = 12;

    private final String text;
    private int at = 2;

    private DurationText(String text) {
        this.text = text;
    }

    /** The duration, not negative, when {@code text} is exactly what would be written for it. */
    static Optional<Duration> read(String text) {
        if (text.equals("PT0S")) {
            return Optional.of(Duration.ZERO);
        }
        return text.startsWith("PT") && text.length() > 2 ? new DurationText(text).parts() : Optional.empty();
    }

    private Optional<Duration> parts() {
        long seconds = 0;
        long number = number();
        if (followedBy('H')) {
            if (number < 1) {
                return Optional.empty();
            }
            seconds += number * HOUR;
            if (at == text.length()) {
                return Optional.of(Duration.ofSeconds(seconds));
            }
            number = number();
        }
        if (followedBy('M')) {
            if (number < 1 || number >= MINUTE) {
                return Optional.empty();
            }
            seconds += number * MINUTE;
            if (at == text.length()) {
                return Optional.of(Duration.ofSeconds(seconds));
            }
            number = number();
        }
        return number < 0 || number >= MINUTE ? Optional.empty() : seconds(seconds, number);
    }

    private Optional<Duration> seconds(long before, long number) {
        int nanos = 0;
        boolean fraction = followedBy('.');
        if (fraction) {
            int begin = at;
            while (at < text.length() && digit(at) && at - begin < NANO_DIGITS) {
                nanos = nanos * 10 + text.charAt(at++) - '0';
            }
            if (at == begin || text.charAt(at - 1) == '0') {
                return Optional.empty();
            }
            for (int i = at - begin; i < NANO_DIGITS; i++) {
                nanos *= 10;
            }
        }
        boolean whole = followedBy('S') && at == text.length() && (number > 0 || fraction);
        return whole ? Optional.of(Duration.ofSeconds(before + number, nanos)) : Optional.empty();
    }

    /** The number that stands here, -1 where none does or it begins with a nought that would not be written. */
    private long number() {
        int begin = at;
        long number = 0;
        while (at < text.length() && digit(at) && at - begin < MOST_DIGITS) {
            number = number * 10 + text.charAt(at++) - '0';
        }
        boolean written = at > begin && (text.charAt(begin) != '0' || at == begin + 1);
        return written ? number : -1;
    }

    private boolean digit(int place) {
        return text.charAt(place) >= '0' && text.charAt(place) <= '9';
    }

    private boolean followedBy(char wanted) {
        if (at < text.length() && text.charAt(at) == wanted) {
            at++;
            return true;
        }
        return false;
    }
}
