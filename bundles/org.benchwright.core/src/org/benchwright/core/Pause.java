package org.benchwright.core;

import java.time.Duration;

/** Lets time pass; tests move their clock instead. */
@FunctionalInterface
public interface Pause {

    /**
     * Waits.
     *
     * @param duration how long; not at all when zero or negative
     * @throws InterruptedException when the waiting thread is asked to stop
     */
    void pause(Duration duration) throws InterruptedException;

    /**
     * Real waiting.
     *
     * @return a pause that puts the thread to sleep
     */
    static Pause system() {
        return duration -> {
            if (!duration.isNegative() && !duration.isZero()) {
                Thread.sleep(duration.toMillis(), duration.toNanosPart() % 1_000_000);
            }
        };
    }
}
