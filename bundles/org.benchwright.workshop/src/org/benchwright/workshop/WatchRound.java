package org.benchwright.workshop;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

import org.benchwright.core.Ticker;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.TestId;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.UnitWatch;
import org.benchwright.watch.WatchRhythm;
import org.benchwright.watch.WatchSources;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PlanJudge;
import org.benchwright.workshop.internal.WatchLog;

/**
 * The watch over all units on soak of one ledger. It finds in the ledger what is on soak, whoever put it there, and writes into it what it
 * sees; window and terminal read it there. The ledger is the only place where they meet.
 */
public final class WatchRound implements AutoCloseable {

    private static final Duration LONGEST_TIMEOUT = Duration.ofSeconds(5);
    private static final Duration SHUTDOWN = Duration.ofSeconds(20);
    /** The same trouble is told as often, however often it happens. */
    private static final Duration SAME_TROUBLE = Duration.ofMinutes(10);

    private final Ledger ledger;
    private final KeptTests kept = new KeptTests();
    private final BenchEndpoints endpoints;
    private final WatchSources sources;
    private final Clock clock;
    private final Ticker ticker;
    private final Duration longestRun;
    private final WatchListener listener;
    private final ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(WatchRound::daemon);
    private final ScheduledExecutorService writer = Executors.newSingleThreadScheduledExecutor(WatchRound::daemon);
    private final ScheduledExecutorService urgent = Executors.newSingleThreadScheduledExecutor(WatchRound::daemon);
    private final Map<TestId, Watched> watched = new HashMap<>();
    private final Map<TestId, Long> looked = new HashMap<>();
    private final Set<String> saidOf = new HashSet<>();
    private final Map<String, Duration> troubles = new ConcurrentHashMap<>();

    /** A unit under watch. */
    private record Watched(UnitWatch watch, WatchLog log, String stage) {
    }

    /** What a watch works with. */
    record Means(Clock clock, Ticker ticker, Path certificates, Duration longestRun) {
    }

    WatchRound(Ledger ledger, BenchEndpoints endpoints, Means means, WatchListener listener) {
        this.ledger = ledger;
        this.endpoints = endpoints;
        this.clock = means.clock();
        this.ticker = means.ticker();
        this.longestRun = means.longestRun();
        this.sources = new WatchSources(means.certificates(), clock, ticker);
        this.listener = listener;
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "watch");
        thread.setDaemon(true);
        return thread;
    }

    /**
     * Looks which units are on soak now: those that have come are watched from here on, those that have gone no longer.
     *
     * @return how many are watched
     * @throws StoreException if the ledger can't be read; what is watched goes on
     */
    public synchronized int look() throws StoreException {
        try {
            Set<TestId> open = new HashSet<>();
            for (TestId test : ledger.tests()) {
                if (looked.getOrDefault(test, 0L) >= 0) {
                    look(test, open);
                }
            }
            Set<TestId> gone = new HashSet<>(watched.keySet());
            gone.removeAll(open);
            gone.forEach(this::leave);
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
        return watched.size();
    }

    private void look(TestId test, Set<TestId> open) throws LedgerException, StoreException {
        Watched now = watched.get(test);
        if (now != null && !now.log().over() && !now.watch().stopped()) {
            open.add(test);
            return;
        }
        long last = ledger.lastSequence(test);
        if (now == null && looked.getOrDefault(test, 0L) == last) {
            return;
        }
        if (ledger.sealed(test)) {
            // Nothing of a sealed test goes on soak again.
            looked.put(test, -1L);
            return;
        }
        if (now != null) {
            leave(test);
        }
        looked.put(test, last);
        try {
            KeptTest read = kept.read(ledger, test);
            if (take(test, read.run())) {
                open.add(test);
            }
        } catch (FaultyRecordException e) {
            trouble(test, "", e.getMessage());
        }
    }

    /** Begins to watch a unit, if it is on a soak that asks for it. */
    private boolean take(TestId test, TestRun run) {
        Optional<SoakStage> soak = run.soakUnderWay();
        Optional<SoakStage.Watch> asked = soak.flatMap(SoakStage::watch);
        String serial = run.opening().serial();
        if (asked.isEmpty()) {
            return false;
        }
        Optional<Endpoint> at = endpoints.of(serial);
        PlanJudge judge = new PlanJudge(run.plan().family(), soak.get());
        Optional<String> objection = at.isEmpty() ? Optional.of(Message.WATCH_NOWHERE.text(serial))
                : at.get().simulated() && !run.rehearsal() ? Optional.of(Message.WATCH_SIMULATED_TEST.text(serial))
                : !at.get().simulated() && !judge.canTell() ? Optional.of(Message.WATCH_NO_POINT.text(run.plan().family().title()))
                : Optional.empty();
        if (objection.isPresent()) {
            trouble(test, serial, objection.get());
            return false;
        }
        begin(test, run, soak.get(), at.get(), judge);
        return true;
    }

    private void begin(TestId test, TestRun run, SoakStage soak, Endpoint at, PlanJudge judge) {
        SoakStage.Watch asked = soak.watch().orElseThrow();
        Duration timeout = asked.every().compareTo(LONGEST_TIMEOUT) < 0 ? asked.every().multipliedBy(9).dividedBy(10) : LONGEST_TIMEOUT;
        Duration longest = longestRun.compareTo(asked.every()) < 0 ? asked.every() : longestRun;
        WatchRhythm rhythm = new WatchRhythm(asked.every(), asked.stopAfterBad(), asked.silentAfter(), longest);
        Clock time = timeOf(run);
        WatchLog log = new WatchLog(test, ledger, kept, time, run, soak.name(), at, this::told, writer, urgent);
        UnitWatch watch = new UnitWatch(sources.open(at, judge, timeout), judge, rhythm, time, ticker, log::tell);
        watched.put(test, new Watched(watch, log, soak.name()));
        // Spread over a period, so that not all are read in the same moment.
        watch.start(timer, asked.every().multipliedBy(Math.floorMod(test.value().hashCode(), 1000)).dividedBy(1000));
    }

    /** A rehearsal that has skipped waiting times is ahead of everybody's clock; its watch goes by the rehearsal's. */
    private Clock timeOf(TestRun run) {
        Duration ahead = Duration.between(clock.instant(), run.lastMoment().instant());
        return run.rehearsal() && !ahead.isNegative() ? Clock.offset(clock, ahead) : clock;
    }

    private void leave(TestId test) {
        Watched gone = watched.remove(test);
        gone.log().end();
        gone.watch().close();
    }

    private void told(WatchListener.Kind kind, String test, String serial, String words) {
        Duration now = ticker.elapsed();
        Optional<Duration> before = Optional.ofNullable(troubles.get(test + words));
        boolean again = kind == WatchListener.Kind.TROUBLE && before.filter(then -> now.minus(then).compareTo(SAME_TROUBLE) < 0).isPresent();
        if (!again) {
            troubles.put(test + words, now);
            listener.told(kind, test, serial, words);
        }
    }

    private void trouble(TestId test, String serial, String words) {
        if (saidOf.add(test.value() + words)) {
            listener.told(WatchListener.Kind.TROUBLE, test.value(), serial, words);
        }
    }

    /** How many samples arrived and how many that were due did not, over all units under watch. */
    public synchronized Map<String, Long> counts() {
        Map<String, Long> sum = new HashMap<>(Map.of("taken", 0L, "missed", 0L));
        watched.values().forEach(one -> one.watch().counts().forEach((key, count) -> sum.merge(key, count, Long::sum)));
        return Map.copyOf(sum);
    }

    /** The serial numbers of the units under watch. */
    public synchronized List<String> serials() {
        return watched.values().stream().map(one -> one.log().serial()).sorted().toList();
    }

    /** Ends the watch: what was seen so far is written down, and that it sees no more. */
    @Override
    public synchronized void close() {
        watched.values().forEach(one -> one.watch().close());
        timer.shutdownNow();
        writer.shutdown();
        urgent.shutdown();
        try {
            urgent.awaitTermination(SHUTDOWN.toMillis(), TimeUnit.MILLISECONDS);
            writer.awaitTermination(SHUTDOWN.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        sources.close();
    }
}
