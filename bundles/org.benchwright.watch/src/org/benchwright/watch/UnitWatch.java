package org.benchwright.watch;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

import org.benchwright.core.Ticker;
import org.benchwright.watch.internal.Message;

/**
 * The watch of one unit: takes samples at a steady rhythm, and hands over what is worth writing down. A sample that takes longer than to
 * the next one is missed; nothing piles up.
 */
public final class UnitWatch implements AutoCloseable {

    private static final Duration LONGEST_WAIT = Duration.ofMinutes(1);

    private final PointReader reader;
    private final Judge judge;
    private final WatchRhythm rhythm;
    private final Observation observation;
    private final Clock clock;
    private final Ticker ticker;
    private final Duration began;
    private final Backoff backoff;
    private final Consumer<List<Observed>> told;
    private boolean reading;
    private boolean closed;
    private long taken;
    private long lost;
    private String lastWhy = "";
    private ScheduledFuture<?> ticking;

    /**
     * @param reader what reads it; closed with this watch
     * @param judge  what its values say
     * @param rhythm how it is watched
     * @param clock  wall time
     * @param ticker monotonic time
     * @param told   takes what is worth writing down, in order; must not wait
     */
    public UnitWatch(PointReader reader, Judge judge, WatchRhythm rhythm, Clock clock, Ticker ticker, Consumer<List<Observed>> told) {
        this.reader = reader;
        this.judge = judge;
        this.rhythm = rhythm;
        this.observation = new Observation(rhythm, judge);
        this.clock = clock;
        this.ticker = ticker;
        this.began = ticker.elapsed();
        this.backoff = new Backoff(rhythm.every(), LONGEST_WAIT);
        this.told = told;
    }

    /**
     * Begins.
     *
     * @param timer what calls at each tick
     * @param phase how long to wait for the first sample, so that not all units are read at once
     */
    public synchronized void start(ScheduledExecutorService timer, Duration phase) {
        ticking = timer.scheduleAtFixedRate(this::tick, phase.toNanos(), rhythm.every().toNanos(), TimeUnit.NANOSECONDS);
    }

    /** It is time for a sample. */
    public void tick() {
        Duration asked = ticker.elapsed();
        synchronized (this) {
            if (closed || observation.stopped()) {
                return;
            }
            if (reading) {
                lost++;
                tell(observation.missed(Message.SEE_TOO_SLOW.text()));
                return;
            }
            if (!backoff.due(asked.plus(halfATick()))) {
                lost++;
                tell(observation.missed(lastWhy));
                return;
            }
            reading = true;
        }
        looked().whenComplete((seen, failure) -> {
            synchronized (this) {
                reading = false;
                if (!closed) {
                    arrived(asked, seen, failure);
                }
            }
        });
    }

    /** What is due by the next tick but for that much is due now: no two ticks come at quite the same distance. */
    private Duration halfATick() {
        return rhythm.every().dividedBy(2);
    }

    /** What was seen, and the unit's own time. */
    private record Seen(Judgement judgement, Optional<Instant> source) {
    }

    /** Whatever goes wrong on the way to a judgement is a sample that did not arrive: an error that nobody hears of would pass for health. */
    private CompletionStage<Seen> looked() {
        try {
            return reader.read().thenApply(values -> new Seen(judge.judge(values), values.source()));
        } catch (RuntimeException e) {
            return CompletableFuture.failedFuture(e);
        }
    }

    private void arrived(Duration asked, Seen seen, Throwable failure) {
        if (failure == null) {
            taken++;
            backoff.succeeded();
            Sample at = new Sample(clock.instant().truncatedTo(ChronoUnit.MILLIS),
                    ticker.elapsed().minus(began).truncatedTo(ChronoUnit.MILLIS), seen.source());
            tell(observation.sample(at, seen.judgement()));
        } else {
            lost++;
            backoff.failed(asked);
            lastWhy = words(failure);
            tell(observation.missed(lastWhy));
        }
    }

    private static String words(Throwable failure) {
        Throwable cause = failure instanceof CompletionException && failure.getCause() != null ? failure.getCause() : failure;
        return cause instanceof CannotSeeException ? cause.getMessage()
                : Message.SEE_FAILED.text(Optional.ofNullable(cause.getMessage()).orElseGet(cause::toString));
    }

    private void tell(List<Observed> observed) {
        if (!observed.isEmpty()) {
            told.accept(observed);
        }
    }

    /** How many samples arrived, and how many that were due did not. */
    public synchronized Map<String, Long> counts() {
        return Map.of("taken", taken, "missed", lost);
    }

    /** True once a stop was told. */
    public synchronized boolean stopped() {
        return observation.stopped();
    }

    /** True while the unit is seen as it must be. */
    public synchronized boolean seeing() {
        return observation.seeing();
    }

    /**
     * Ends the watch: what it has seen so far is handed over, and that it sees no more.
     *
     * @param why why it is ended, in plain words
     */
    public void end(String why) {
        synchronized (this) {
            if (closed) {
                return;
            }
            closed = true;
            if (ticking != null) {
                ticking.cancel(false);
            }
            if (!observation.stopped()) {
                tell(observation.end(why));
            }
        }
        reader.close();
    }

    @Override
    public void close() {
        end(Message.SEE_ENDED.text());
    }
}
