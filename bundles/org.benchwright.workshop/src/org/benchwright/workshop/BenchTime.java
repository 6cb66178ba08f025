package org.benchwright.workshop;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

import org.benchwright.core.Pause;
import org.benchwright.core.Ticker;

/** The time of a bench: a wall clock, a clock that only goes forward, and waiting. */
public interface BenchTime {

    /** Wall time. People and time servers may step it. */
    Instant now();

    /** Time by the clock that only goes forward; only differences mean something. */
    Duration elapsed();

    /**
     * Lets time pass.
     *
     * @throws InterruptedException if the waiting thread is interrupted
     */
    void pause(Duration duration) throws InterruptedException;

    /** True if pauses take no time: such a time serves rehearsals only, and {@link Workshop} sees to it. */
    boolean jumps();

    /** The time that everybody's watch shows. */
    static BenchTime real() {
        return of(Clock.systemUTC(), Ticker.system(), Pause.system());
    }

    /** Time by these clocks; pauses take as long as {@code pause} makes them take. */
    static BenchTime of(Clock clock, Ticker ticker, Pause pause) {
        return new BenchTime() {
            @Override
            public Instant now() {
                return clock.instant();
            }

            @Override
            public Duration elapsed() {
                return ticker.elapsed();
            }

            @Override
            public void pause(Duration duration) throws InterruptedException {
                pause.pause(duration);
            }

            @Override
            public boolean jumps() {
                return false;
            }
        };
    }
}
