package org.benchwright.ui.internal.desk;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

import org.benchwright.present.BatchStart;
import org.benchwright.ui.internal.Failures;
import org.eclipse.core.runtime.ILog;

/**
 * Tests of batches that are still to be opened, each at its time. Only this window knows of them. A start that is refused stays until somebody
 * opens it by hand or takes it off. Any thread may call it.
 */
final class WaitingStarts implements AutoCloseable {

    private static final long TICK_MILLIS = 500;

    private final Clock clock;
    private final Function<Desk.Request, CompletableFuture<OpenTest>> opening;
    private final Runnable changed;
    private final ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "waiting starts"));
    private final List<Batch> batches = new ArrayList<>();
    private List<String> told = List.of();
    private boolean ticking;

    /** One batch; changed under the lock of the list alone. */
    private static final class Batch {
        private BatchStart plan;
        private final Map<String, Desk.Request> requests = new LinkedHashMap<>();
        private final Map<String, String> refused = new LinkedHashMap<>();
        private Optional<String> opening = Optional.empty();

        List<WaitingStart> rows() {
            return requests.entrySet().stream().map(each -> new WaitingStart(each.getValue(), due(each.getKey()),
                    Optional.ofNullable(refused.get(each.getKey())),
                    opening.equals(Optional.of(each.getKey())))).toList();
        }

        private Optional<Instant> due(String serial) {
            return plan.starts().stream().filter(start -> start.serial().equals(serial)).findFirst().map(BatchStart.Start::due);
        }
    }

    /**
     * @param opening opens one of them on threads of its own
     * @param changed is told whenever what is told of them has changed
     */
    WaitingStarts(Clock clock, Function<Desk.Request, CompletableFuture<OpenTest>> opening, Runnable changed) {
        this.clock = clock;
        this.opening = opening;
        this.changed = changed;
    }

    /**
     * Has the rest of a batch wait.
     *
     * @param plan when each begins
     * @param like what to open, but for the serial number
     */
    void add(BatchStart plan, Desk.Request like) {
        synchronized (batches) {
            Batch batch = new Batch();
            batch.plan = plan;
            plan.starts().forEach(start -> batch.requests.put(start.serial(), like.of(start.serial())));
            batches.add(batch);
            if (!ticking) {
                ticking = true;
                timer.scheduleWithFixedDelay(this::tick, TICK_MILLIS, TICK_MILLIS, TimeUnit.MILLISECONDS);
            }
        }
        tell();
    }

    /** All that are not open yet, batch by batch, in the order in which they were given. */
    List<WaitingStart> rows() {
        synchronized (batches) {
            return batches.stream().flatMap(batch -> batch.rows().stream()).toList();
        }
    }

    /** Opens one now, whenever it is due; does nothing where it is gone, or one of its batch is being opened this moment. */
    void beginNow(String serial) {
        begin(Optional.of(serial));
    }

    /** It is not begun; does nothing where it is gone or is being opened this moment. */
    void takeOff(String serial) {
        synchronized (batches) {
            batches.stream().filter(batch -> !batch.opening.equals(Optional.of(serial))).forEach(batch -> forget(batch, serial));
        }
        tell();
    }

    private static void forget(Batch batch, String serial) {
        batch.plan = batch.plan.without(serial);
        batch.requests.remove(serial);
        batch.refused.remove(serial);
    }

    private void tick() {
        try {
            begin(Optional.empty());
            tell();
        } catch (RuntimeException e) {
            // One that was let out would end all ticks, and what waits would never begin.
            ILog.of(WaitingStarts.class).error(String.valueOf(e.getMessage()), e);
        }
    }

    /** Begins the one that is asked for, or whatever is due. */
    private void begin(Optional<String> asked) {
        Map<Batch, Desk.Request> begun = new LinkedHashMap<>();
        synchronized (batches) {
            for (Batch batch : batches) {
                Optional<String> serial = asked.filter(batch.requests::containsKey)
                        .or(() -> asked.isPresent() ? Optional.empty() : batch.plan.due(clock.instant()).map(BatchStart.Start::serial));
                if (batch.opening.isEmpty() && serial.isPresent()) {
                    batch.opening = serial;
                    batch.refused.remove(serial.get());
                    begun.put(batch, batch.requests.get(serial.get()));
                }
            }
        }
        begun.forEach((batch, request) -> opening.apply(request).whenComplete(
                (test, failure) -> ended(batch, request.serial(), Optional.ofNullable(failure))));
        if (!begun.isEmpty()) {
            tell();
        }
    }

    private void ended(Batch batch, String serial, Optional<Throwable> failure) {
        synchronized (batches) {
            batch.opening = Optional.empty();
            if (failure.isPresent()) {
                // Nothing was switched on: the others keep their times.
                batch.plan = batch.plan.without(serial);
                batch.refused.put(serial, Failures.words(failure.get()));
            } else {
                batch.plan = batch.plan.begun(serial, clock.instant());
                forget(batch, serial);
            }
            batches.removeIf(each -> each.requests.isEmpty());
        }
        tell();
    }

    private void tell() {
        List<String> now = rows().stream().map(row -> row.serial() + " " + row.words(clock.instant(), ZoneId.systemDefault())).toList();
        boolean news;
        synchronized (batches) {
            news = !now.equals(told);
            told = now;
        }
        if (news) {
            changed.run();
        }
    }

    @Override
    public void close() {
        timer.shutdownNow();
    }
}
