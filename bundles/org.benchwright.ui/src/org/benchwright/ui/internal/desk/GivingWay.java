package org.benchwright.ui.internal.desk;

import java.time.Duration;
import java.util.function.LongSupplier;

import org.benchwright.core.Cancellation;

/**
 * Work behind the window asks again and again whether it should stop; here it is held up a little if somebody has just done something in the window.
 * Reading a ledger and drawing a screen want the same processors, and the one who waits for the screen goes first.
 */
public final class GivingWay implements Cancellation {

    /** Within this a screen is shown. */
    private static final Duration JUST_NOW = Duration.ofMillis(150);
    /** Whoever types on and on doesn't stop the work: so much of it is done after each rest, which takes no longer than that. */
    private static final Duration WORK = Duration.ofMillis(20);
    private static final Duration LONGEST_REST = Duration.ofMillis(200);
    private static final Duration NAP = Duration.ofMillis(10);

    private final StillWindow window;
    private final Cancellation work;
    private final LongSupplier nanos;
    private final Sleep sleep;
    private volatile long rested;

    /** How a rest is slept through. */
    @FunctionalInterface
    public interface Sleep {
        void last(Duration time) throws InterruptedException;
    }

    /** @param work says whether the work should stop */
    public GivingWay(StillWindow window, Cancellation work) {
        this(window, work, System::nanoTime, time -> Thread.sleep(time.toMillis()));
    }

    /** @param nanos a clock as {@link System#nanoTime}, which {@code sleep} takes on */
    public GivingWay(StillWindow window, Cancellation work, LongSupplier nanos, Sleep sleep) {
        this.window = window;
        this.work = work;
        this.nanos = nanos;
        this.sleep = sleep;
        this.rested = nanos.getAsLong();
    }

    @Override
    public boolean requested() {
        if (passed(rested, WORK)) {
            rest();
            rested = nanos.getAsLong();
        }
        return work.requested();
    }

    private void rest() {
        long begin = nanos.getAsLong();
        while (window.actedWithin(JUST_NOW) && !passed(begin, LONGEST_REST) && !work.requested()) {
            try {
                sleep.last(NAP);
            } catch (InterruptedException asked) {
                // The work itself has to hear that its thread should end.
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    private boolean passed(long since, Duration time) {
        return nanos.getAsLong() - since >= time.toNanos();
    }
}
