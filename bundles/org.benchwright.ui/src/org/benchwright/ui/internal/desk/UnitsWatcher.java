package org.benchwright.ui.internal.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.benchwright.present.Bench;
import org.benchwright.present.BenchMemory;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.FilesSeen;
import org.benchwright.present.SharedBench;
import org.benchwright.present.UnitRow;
import org.eclipse.core.runtime.ILog;

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
    private final AtomicBoolean asked = new AtomicBoolean();
    private FilesSeen seen = FilesSeen.NEVER;
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
            looker.scheduleWithFixedDelay(() -> goOn(this::lookIfChanged), 0, PERIOD.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    /** Reads as soon as may be, for something was recorded here: whatever the files look like, it can be read by now. */
    void look() {
        if (!looker.isShutdown() && asked.compareAndSet(false, true)) {
            looker.execute(() -> {
                asked.set(false);
                goOn(() -> look(seen()));
            });
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

    private FilesSeen seen() {
        List<Path> files = new ArrayList<>(FilesSeen.ofLedger(ledger));
        files.add(ledger.resolveSibling("shared.state"));
        return seen.look(files);
    }

    /** Whatever goes wrong is told, and the next look is taken all the same: a list that stands still would pass for a quiet bench. */
    private static void goOn(Runnable looking) {
        try {
            looking.run();
        } catch (RuntimeException mistake) {
            ILog.of(UnitsWatcher.class).error(String.valueOf(mistake.getMessage()), mistake);
        }
    }

    private void lookIfChanged() {
        FilesSeen now = seen();
        if (now.mayHoldMoreThan(seen) || System.nanoTime() - lastRead >= LONGEST.toNanos()) {
            look(now);
        }
    }

    private void look(FilesSeen now) {
        seen = now;
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

    @Override
    public void close() {
        looker.shutdownNow();
    }
}
