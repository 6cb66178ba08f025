package org.benchwright.language.proof;

import java.time.Duration;
import java.util.Objects;

/**
 * Two times that a test takes.
 *
 * @param bench    how long the unit occupies its place
 * @param attended how long a person is needed
 */
public record TimeSpan(Duration bench, Duration attended) {

    /** No time at all. */
    public static final TimeSpan NONE = new TimeSpan(Duration.ZERO, Duration.ZERO);

    public TimeSpan {
        Objects.requireNonNull(bench);
        Objects.requireNonNull(attended);
    }

    /** Both together with another. */
    public TimeSpan plus(TimeSpan other) {
        return new TimeSpan(bench.plus(other.bench), attended.plus(other.attended));
    }

    /** The shorter of each. */
    public TimeSpan shorter(TimeSpan other) {
        return new TimeSpan(bench.compareTo(other.bench) <= 0 ? bench : other.bench,
                attended.compareTo(other.attended) <= 0 ? attended : other.attended);
    }

    /** The longer of each. */
    public TimeSpan longer(TimeSpan other) {
        return new TimeSpan(bench.compareTo(other.bench) >= 0 ? bench : other.bench,
                attended.compareTo(other.attended) >= 0 ? attended : other.attended);
    }
}
