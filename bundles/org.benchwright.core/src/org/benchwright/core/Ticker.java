package org.benchwright.core;

import java.time.Duration;

/** A clock that only ever goes forward: deadlines count by it, so that setting the wall clock shifts none of them. */
@FunctionalInterface
public interface Ticker {

    /**
     * The time since a fixed but arbitrary instant.
     *
     * @return never less than before
     */
    Duration elapsed();

    /**
     * The machine's own ticker.
     *
     * @return a ticker that starts at zero
     */
    static Ticker system() {
        long start = System.nanoTime();
        return () -> Duration.ofNanos(System.nanoTime() - start);
    }
}
