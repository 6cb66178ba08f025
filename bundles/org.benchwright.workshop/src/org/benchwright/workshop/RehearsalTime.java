package org.benchwright.workshop;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicReference;

/** The time of a rehearsal: it starts at the real time and jumps over every pause. */
public final class RehearsalTime implements BenchTime {

    private final BenchTime real;
    private final AtomicReference<Duration> jumped = new AtomicReference<>(Duration.ZERO);

    /** @param real the time that passes between the jumps */
    public RehearsalTime(BenchTime real) {
        this.real = real;
    }

    @Override
    public Instant now() {
        return real.now().plus(jumped.get());
    }

    @Override
    public Duration elapsed() {
        return real.elapsed().plus(jumped.get());
    }

    @Override
    public void pause(Duration duration) {
        if (!duration.isNegative()) {
            jumped.updateAndGet(duration::plus);
        }
    }

    @Override
    public boolean jumps() {
        return true;
    }
}
