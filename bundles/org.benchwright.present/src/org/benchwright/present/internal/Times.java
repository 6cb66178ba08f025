package org.benchwright.present.internal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.function.Function;

import org.benchwright.present.WallTime;

/** How instants are told in words, to the second: finer is in the record, and nobody reads it. */
public final class Times {

    private final WallTime wall;
    private final Function<Instant, String> words;

    private Times(WallTime wall, Function<Instant, String> words) {
        this.wall = wall;
        this.words = words;
    }

    /** By the clock on the wall of whoever reads it, as all times on a screen are. */
    public static Times here() {
        return in(ZoneId.systemDefault());
    }

    /** By the clock on the wall in a zone. */
    public static Times in(ZoneId zone) {
        WallTime wall = new WallTime(zone);
        return new Times(wall, wall::second);
    }

    /** As papers and files have it, that are read anywhere: ISO 8601 in UTC. */
    public static Times inPapers() {
        return new Times(new WallTime(ZoneOffset.UTC), instant -> instant.truncatedTo(ChronoUnit.SECONDS).toString());
    }

    /** The words for an instant. */
    public String words(Instant instant) {
        return words.apply(instant);
    }

    /** The day alone, such as 2026-05-31. */
    public String day(Instant instant) {
        return wall.day(instant);
    }
}
