package org.benchwright.ui.internal.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.benchwright.present.Bench;
import org.benchwright.present.BenchMemory;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.SharedBench;
import org.benchwright.present.UnitRow;

/** Looks again and again at which tests are open on the bench, whoever opened them. */
final class UnitsWatcher implements AutoCloseable {

    private static final Duration PERIOD = Duration.ofSeconds(2);
    /** Even an unchanged ledger is read as often: a look may have become overdue. */
    private static final Duration LONGEST = Duration.ofSeconds(30);

    private final Path ledger;
    private final BenchMemory memory;
    private final Runnable changed;
    private final ScheduledExecutorService looker = Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "units on the bench"));
    private final AtomicBoolean started = new AtomicBoolean();
    private volatile State state = new State(List.of(), Optional.empty(), Optional.empty());
    private String lastStamp = "";
    private long lastRead;
    private boolean first = true;

    private record State(List<UnitRow> units, Optional<String> trouble, Optional<SharedBench.State> forwarding) {
    }

    UnitsWatcher(Path ledger, BenchMemory memory, Runnable changed) {
        this.ledger = ledger;
        this.memory = memory;
        this.changed = changed;
    }

    /** Begins to look; a second call does nothing. */
    void start() {
        if (started.compareAndSet(false, true)) {
            looker.scheduleWithFixedDelay(this::lookIfChanged, 0, PERIOD.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    /** Looks as soon as may be. */
    void look() {
        if (!looker.isShutdown()) {
            looker.execute(this::lookIfChanged);
        }
    }

    List<UnitRow> units() {
        return state.units();
    }

    Optional<String> trouble() {
        return state.trouble();
    }

    /** How forwarding to a shared ledger stands; empty where this bench shares none. */
    Optional<SharedBench.State> forwarding() {
        return state.forwarding();
    }

    private void lookIfChanged() {
        String stamp = stamp(ledger) + stamp(ledger.resolveSibling("shared.state")) + stamp(ledger.resolveSibling(ledger.getFileName() + "-wal"));
        if (stamp.equals(lastStamp) && System.nanoTime() - lastRead < LONGEST.toNanos()) {
            return;
        }
        lastStamp = stamp;
        lastRead = System.nanoTime();
        State next = read();
        if (first || !next.equals(state)) {
            first = false;
            state = next;
            changed.run();
        }
    }

    private State read() {
        if (!Files.exists(ledger)) {
            return new State(List.of(), Optional.empty(), Optional.empty());
        }
        try (Bench bench = Bench.read(ledger, Bench.Clocks.system(), memory)) {
            return new State(bench.units(), Optional.empty(), shared());
        } catch (CannotStoreException e) {
            return new State(List.of(), Optional.of(e.getMessage()), Optional.empty());
        }
    }

    private Optional<SharedBench.State> shared() throws CannotStoreException {
        Optional<SharedBench> shared = SharedBench.of(ledger, System.getenv(), Bench.Clocks.system());
        return shared.isPresent() ? Optional.of(shared.get().state()) : Optional.empty();
    }

    private static String stamp(Path file) {
        try {
            return Files.exists(file) ? Files.size(file) + "@" + Files.getLastModifiedTime(file) + " " : "none ";
        } catch (IOException e) {
            // It may just have been removed; then it is read, and whatever is wrong shows there.
            return "unreadable " + System.nanoTime();
        }
    }

    @Override
    public void close() {
        looker.shutdownNow();
    }
}
