package org.benchwright.workshop.tests;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

import org.benchwright.core.Pause;
import org.benchwright.core.Ticker;
import org.benchwright.workshop.BenchTime;

/** Clocks that a test moves by hand, from any thread. */
public final class MovedTime extends Clock implements Ticker, Pause {

    private Instant wall = Instant.parse("2026-03-02T07:30:00Z");
    private Duration elapsed = Duration.ofHours(5);

    /** As a bench's time. */
    public BenchTime benchTime() {
        return BenchTime.of(this, this, this);
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
