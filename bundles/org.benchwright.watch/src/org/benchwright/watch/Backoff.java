package org.benchwright.watch;

import java.time.Duration;

/** How long to wait before trying again: longer after each failure, up to a limit. A unit that is off should not be knocked at all day. */
public final class Backoff {

    private final Duration first;
    private final Duration longest;
    private Duration wait = Duration.ZERO;
    private Duration next = Duration.ZERO;

    /**
     * @param first   the wait after the first failure
     * @param longest the longest wait
     */
    public Backoff(Duration first, Duration longest) {
        this.first = first;
        this.longest = longest;
    }

    /** True if it is time to try again. */
    public boolean due(Duration now) {
        return now.compareTo(next) >= 0;
    }

    /** What was tried at that time failed. */
    public void failed(Duration tried) {
        Duration doubled = wait.isZero() ? first : wait.multipliedBy(2);
        wait = doubled.compareTo(longest) > 0 ? longest : doubled;
        next = tried.plus(wait);
    }

    /** It went well: the next failure is the first again. */
    public void succeeded() {
        wait = Duration.ZERO;
        next = Duration.ZERO;
    }
}
