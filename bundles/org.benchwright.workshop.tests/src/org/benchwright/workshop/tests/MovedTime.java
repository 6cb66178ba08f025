package org.benchwright.workshop.tests;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;

import org.benchwright.core.Pause;
import org.benchwright.core.Ticker;
import org.benchwright.workshop.BenchTime;
import org.junit.jupiter.api.function.Executable;

/** Clocks that a test moves by hand, from any thread. */
public final class MovedTime extends Clock implements Ticker, Pause {

    private Instant wall = Instant.parse("2026-03-02T07:30:00Z");
    private Duration elapsed = Duration.ofHours(5);

    /** As a bench's time. */
    public BenchTime benchTime() {
        return BenchTime.of(this, this, this);
    }

    /** The bench's time, as whoever signs asks for it first after reading the books; right then somebody else does {@code meanwhile}. */
    BenchTime interrupted(Executable meanwhile) {
        Queue<Executable> once = new ArrayDeque<>(List.of(meanwhile));
        Clock asked = new Clock() {
            @Override
            public Instant instant() {
                if (!once.isEmpty()) {
                    assertDoesNotThrow(once.remove());
                }
                return MovedTime.this.instant();
            }

            @Override
            public ZoneId getZone() {
                return MovedTime.this.getZone();
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return MovedTime.this.withZone(zone);
            }
        };
        return BenchTime.of(asked, this, this);
    }

    /** Lets time pass on both clocks. */
    public synchronized void advance(Duration by) {
        wall = wall.plus(by);
        elapsed = elapsed.plus(by);
    }

    /** Somebody sets the wall clock. */
    public synchronized void stepWall(Duration by) {
        wall = wall.plus(by);
    }

    @Override
    public synchronized void pause(Duration duration) {
        advance(duration);
    }

    @Override
    public synchronized Duration elapsed() {
        return elapsed;
    }

    @Override
    public synchronized Instant instant() {
        return wall;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException("the bench works in UTC");
    }
}
