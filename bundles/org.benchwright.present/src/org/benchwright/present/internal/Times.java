package org.benchwright.present.internal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.function.Function;

import org.benchwright.present.WallTime;

/** How instants are told in words, to the second: finer is in the record, and nobody reads it. */
public final class Times {

    private final Function<Instant, String> words;

    private Times(Function<Instant, String> words) {
        this.words = words;
    }

    /** By the clock on the wall of whoever reads it, as all times on a screen are. */
    public static Times here() {
        return in(ZoneId.systemDefault());
    }

    /** By the clock on the wall in a zone. */
    public static Times in(ZoneId zone) {
        return new Times(new WallTime(zone)::second);
    }

    /** As papers and files have it, that are read anywhere: ISO 8601 in UTC. */
    public static Times inPapers() {
        return new Times(instant -> instant.truncatedTo(ChronoUnit.SECONDS).toString());
    }

    /** The words for an instant. */
    public String words(Instant instant) {
        return words.apply(instant);
    }
}
