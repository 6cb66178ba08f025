package org.benchwright.core;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.benchwright.core.internal.Message;

/** Lengths of time in shop words ({@code 72 h}, {@code 2 h 30 min}) and in the notation of ISO 8601 ({@code PT72H}). */
public final class Durations {

    private static final int LONGEST = 40;
    private static final BigDecimal NANOS_PER_SECOND = BigDecimal.valueOf(1_000_000_000L);
    private static final String PART = "([0-9]+(?:[.,][0-9]+)?)[ \\u00a0\\u202f]?([A-Za-z\\u00b5\\u03bc]+)";
    private static final Pattern ONE_PART = Pattern.compile(PART);
    private static final Pattern ALL_PARTS = Pattern.compile("-?" + PART + "(?:[ \\u00a0\\u202f]" + PART + ")*");
    private static final UnitOfMeasure SECOND = UnitOfMeasure.of("s");

    private Durations() {
    }

    /**
     * Reads a length of time: one or more parts with their units, the larger first ({@code 2 h 30 min}, {@code 1,5 h},
     * {@code 72h}), or the time-based notation of ISO 8601 ({@code PT72H}, {@code P3D}, {@code -PT6H+3M}). A leading
     * minus turns the whole round.
     *
     * @param text the text, at most 40 characters
     * @return the length of time, exact to the nanosecond
     * @throws DurationFormatException when the text is anything else; months, years and weeks have no fixed place here
     */
    public static Duration parse(String text) throws DurationFormatException {
        String trimmed = text.strip();
        if (trimmed.isEmpty()) {
            throw new DurationFormatException(Message.DURATION_EMPTY.text());
        }
        if (trimmed.length() > LONGEST) {
            throw new DurationFormatException(Message.DURATION_TOO_LONG.text(Integer.toString(LONGEST)));
        }
        return trimmed.toUpperCase(Locale.ROOT).matches("[+-]?P.*") ? parseIso(trimmed) : parseWords(trimmed);
    }

    /**
     * A length of time in shop words, readable by {@link #parse(String)}. Hours are the largest unit, as soaks are
     * talked about in hours.
     *
     * @param duration any length of time
     * @return {@code 72 h}, {@code 2 h 30 min}, {@code 10 s}, {@code 1.5 s}, {@code 250 ms}
     */
    public static String words(Duration duration) {
        if (duration.isNegative()) {
            return "-" + words(negated(duration));
        }
        long seconds = duration.getSeconds();
        List<String> parts = new ArrayList<>();
        if (seconds >= 3600) {
            parts.add(seconds / 3600 + " h");
        }
        if (seconds % 3600 >= 60) {
            parts.add(seconds % 3600 / 60 + " min");
        }
        if (seconds % 60 != 0 || duration.getNano() != 0 || parts.isEmpty()) {
            parts.add(secondsInWords(seconds % 60, duration.getNano(), parts.isEmpty()));
        }
        return String.join(" ", parts);
    }

    /**
     * A length of time cut down to whole hours, below an hour to whole minutes, below a minute to whole seconds: as exact as people say
     * it, and never longer than it is.
     *
     * @param duration not negative
     * @return at most {@code duration}
     */
    public static Duration cutDown(Duration duration) {
        long seconds = duration.getSeconds();
        long whole = seconds >= 3600 ? 3600 : seconds >= 60 ? 60 : 1;
        return Duration.ofSeconds(seconds / whole * whole);
    }

    /**
     * A length of time in whole seconds, a half or more rounded up: clocks tell more than anybody wants to read.
     *
     * @param duration any length of time
     * @return at most half a second away from {@code duration}
     */
    public static Duration wholeSeconds(Duration duration) {
        return Duration.ofSeconds(duration.plusMillis(500).getSeconds());
    }

    private static Duration negated(Duration duration) {
        // The most negative length of all has no counterpart; no bench lives to see it.
        if (duration.getSeconds() == Long.MIN_VALUE) {
            throw new IllegalArgumentException(Message.DURATION_TOO_LARGE.text(duration.toString()));
        }
        return duration.negated();
    }

    private static String secondsInWords(long seconds, int nanos, boolean alone) {
        if (alone && seconds == 0 && nanos != 0 && nanos % 1_000_000 == 0) {
            return nanos / 1_000_000 + " ms";
        }
        BigDecimal exact = BigDecimal.valueOf(nanos, 9).add(BigDecimal.valueOf(seconds)).stripTrailingZeros();
        return exact.toPlainString() + " s";
    }

    private static Duration parseIso(String text) {
        try {
            return Duration.parse(text);
        } catch (DateTimeParseException refused) {
            if (refused.getCause() != null) {
                throw new DurationFormatException(Message.DURATION_TOO_LARGE.text(text), refused);
            }
            throw new DurationFormatException(Message.DURATION_CALENDAR.text(text), refused);
        }
    }

    private static Duration parseWords(String text) {
        if (!ALL_PARTS.matcher(text).matches()) {
            throw new DurationFormatException(Message.DURATION_NOT_UNDERSTOOD.text(text));
        }
        BigDecimal seconds = BigDecimal.ZERO;
        BigDecimal previousUnit = null;
        Matcher parts = ONE_PART.matcher(text);
        while (parts.find()) {
            UnitOfMeasure unit = UnitOfMeasure.find(parts.group(2)).filter(SECOND::sameDimension)
                    .orElseThrow(() -> new DurationFormatException(Message.DURATION_NOT_UNDERSTOOD.text(text)));
            BigDecimal size = new Quantity(BigDecimal.ONE, unit).exactIn(SECOND);
            if (previousUnit != null && size.compareTo(previousUnit) >= 0) {
                throw new DurationFormatException(Message.DURATION_ORDER.text(text));
            }
            previousUnit = size;
            seconds = seconds.add(new BigDecimal(parts.group(1).replace(',', '.')).multiply(size));
        }
        return ofSeconds(text.startsWith("-") ? seconds.negate() : seconds, text);
    }

    private static Duration ofSeconds(BigDecimal seconds, String text) {
        BigDecimal nanos = seconds.multiply(NANOS_PER_SECOND).stripTrailingZeros();
        if (nanos.scale() > 0) {
            throw new DurationFormatException(Message.DURATION_TOO_FINE.text(text));
        }
        try {
            var split = nanos.toBigIntegerExact().divideAndRemainder(NANOS_PER_SECOND.toBigInteger());
            return Duration.ofSeconds(split[0].longValueExact(), split[1].longValueExact());
        } catch (ArithmeticException tooLarge) {
            throw new DurationFormatException(Message.DURATION_TOO_LARGE.text(text), tooLarge);
        }
    }
}
