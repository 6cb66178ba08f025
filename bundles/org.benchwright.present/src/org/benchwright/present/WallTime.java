package org.benchwright.present;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * How instants are told on a screen: by the clock on the wall of whoever reads them, as finely as they are read.
 *
 * @param zone where that clock hangs
 */
public record WallTime(ZoneId zone) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter NEAR = DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter TODAY = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter JUST_NOW = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    /** The clock of this machine. */
    public static WallTime here() {
        return new WallTime(ZoneId.systemDefault());
    }

    /** The day alone, such as 2026-05-31. */
    public String day(Instant instant) {
        return words(DAY, instant);
    }

    /** To the minute, in any year: 2026-05-31 14:05. */
    public String minute(Instant instant) {
        return words(MINUTE, instant);
    }

    /** To the second, in any year: 2026-05-31 14:05:09. */
    public String second(Instant instant) {
        return words(SECOND, instant);
    }

    /** Some days away at most, so that nobody asks for the year: 31 May 14:05. */
    public String near(Instant instant) {
        return words(NEAR, instant);
    }

    /** As {@link #near}, without the day where that is today's. */
    public String near(Instant instant, Instant now) {
        return LocalDate.ofInstant(instant, zone).equals(LocalDate.ofInstant(now, zone)) ? today(instant) : near(instant);
    }

    /** On the day on which it is read: 14:05. */
    public String today(Instant instant) {
        return words(TODAY, instant);
    }

    /** Seconds or minutes ago: 14:05:09. */
    public String justNow(Instant instant) {
        return words(JUST_NOW, instant);
    }

    private String words(DateTimeFormatter format, Instant instant) {
        return format.format(instant.atZone(zone));
    }
}
