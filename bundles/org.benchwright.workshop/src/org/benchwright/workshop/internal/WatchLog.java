package org.benchwright.workshop.internal;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.TestId;
import org.benchwright.watch.Endpoint;
import org.benchwright.watch.Observed;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.StoreException;
import org.benchwright.workshop.WatchListener;
import org.benchwright.workshop.WatchListener.Kind;

/**
 * Writes what a watch observed of one unit into its test. Taking it never waits: a thread of its own writes, reads the test again where
 * somebody else has written to it meanwhile, and tries again where the ledger cannot be written. What waits is bounded; beyond that the
 * watch is given up, and the next one says that the time between was not seen.
 */
public final class WatchLog {

    private static final Actor WATCH = new Actor("watch", Role.WATCH);
    private static final int MOST_WAITING = 500;
    private static final int TRIES = 20;
    private static final Duration AGAIN = Duration.ofSeconds(2);

    private final TestId test;
    private final Ledger ledger;
    private final KeptTests kept;
    private final Clock clock;
    private final String stage;
    private final WatchFact.Watcher by;
    private final String source;
    private final String serial;
    private final WatchListener listener;
    private final ScheduledExecutorService writer;
    private final ScheduledExecutorService urgent;
    private final Lock writing = new ReentrantLock();
    private final Deque<Observed> waiting = new ArrayDeque<>();
    private boolean scheduled;
    private boolean troubleTold;
    private volatile boolean over;
    private TestRun run;

    /**
     * @param run      the test as it is in the ledger
     * @param stage    the soak
     * @param at       what is watched
     * @param listener hears what was written
     * @param writer   the thread that writes
     * @param urgent   the thread that writes what cannot wait for the runs of other units
     */
    public WatchLog(TestId test, Ledger ledger, KeptTests kept, Clock clock, TestRun run, String stage, Endpoint at, WatchListener listener,
            ScheduledExecutorService writer, ScheduledExecutorService urgent) {
        this.test = test;
        this.ledger = ledger;
        this.kept = kept;
        this.clock = clock;
        this.run = run;
        this.stage = stage;
        this.by = new WatchFact.Watcher(run.lastWatch() + 1, at.simulated());
        this.source = at.words();
        this.serial = run.opening().serial();
        this.listener = listener;
        this.writer = writer;
        this.urgent = urgent;
    }

    /** The unit's serial number. */
    public String serial() {
        return serial;
    }

    /** True once there is nothing more to write: the soak is over, or this watch was given up. */
    public boolean over() {
        return over;
    }

    /** Takes no more. */
    public void end() {
        over = true;
    }

    /** Takes what was observed; it is written by another thread. */
    public synchronized void tell(List<Observed> observed) {
        if (over) {
            return;
        }
        waiting.addAll(observed);
        if (waiting.size() > MOST_WAITING) {
            over = true;
            waiting.clear();
            listener.told(Kind.TROUBLE, test.value(), serial, Message.WATCH_GIVEN_UP.text(serial));
        } else if (observed.stream().anyMatch(one -> !(one instanceof Observed.Held))) {
            schedule(urgent, Duration.ZERO);
        } else if (!scheduled) {
            scheduled = true;
            schedule(writer, Duration.ZERO);
        }
    }

    private void schedule(ScheduledExecutorService by, Duration delay) {
        try {
            by.schedule((Runnable) this::write, delay.toMillis(), TimeUnit.MILLISECONDS);
        } catch (RejectedExecutionException ending) {
            // The watch is ending, and cannot wait for the ledger any longer.
            over = true;
        }
    }

    private void write() {
        writing.lock();
        try {
            writeAll();
        } finally {
            writing.unlock();
        }
    }

    private void writeAll() {
        for (Observed next = peek(); next != null; next = peek()) {
            try {
                write(next);
                troubleTold = false;
            } catch (LedgerException | StoreException e) {
                trouble(Message.WATCH_CANNOT_WRITE.text(serial, String.valueOf(e.getMessage())));
                schedule(writer, AGAIN);
                return;
            } catch (RefusedException e) {
                // The soak has ended, or another watch has taken over: whoever looks next sees which.
                if (run.onSoak()) {
                    trouble(Message.WATCH_REFUSED.text(serial, e.getMessage()));
                }
                over = true;
            } catch (FaultyRecordException e) {
                trouble(e.getMessage());
                over = true;
            }
            synchronized (this) {
                if (over) {
                    waiting.clear();
                } else {
                    waiting.remove();
                }
            }
        }
    }

    private synchronized Observed peek() {
        Observed next = waiting.peek();
        scheduled = next != null;
        return next;
    }

    private void trouble(String words) {
        if (!troubleTold) {
            troubleTold = true;
            listener.told(Kind.TROUBLE, test.value(), serial, words);
        }
    }

    private void write(Observed observed) throws RefusedException, LedgerException, StoreException, FaultyRecordException {
        Fact fact = kept.asKept(WatchFacts.of(observed, stage, by, source));
        for (int tries = 0;; tries++) {
            List<TestEvent> made = run.record(fact, WATCH, moment());
            try {
                ledger.append(test, run.lastSequence(), kept.drafts(test, made));
                run = run.with(made);
                heard(observed, made);
                return;
            } catch (SequenceConflictException conflict) {
                if (tries == TRIES) {
                    throw conflict;
                }
                run = kept.read(ledger, test).run();
            } catch (DoesNotFollowException e) {
                throw new IllegalStateException("the engine does not follow its own events", e);
            }
        }
    }

    /** The watch has no part in the sitting: its clock stays where the sitting left it. */
    private Moment moment() {
        Moment last = run.lastMoment();
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        return new Moment(now, last.sitting(), last.offset());
    }

    private void heard(Observed observed, List<TestEvent> made) {
        made.stream().map(TestEvent::body).filter(Derived.SoakEnded.class::isInstance).map(Derived.SoakEnded.class::cast).findFirst()
                .ifPresent(ended -> {
                    over = true;
                    boolean stop = ended.outcome() == Derived.Outcome.DOES_NOT_CONFORM;
                    listener.told(stop ? Kind.STOPPED : Kind.DONE, test.value(), serial, ended.words());
                });
        if (over) {
            return;
        } else if (observed instanceof Observed.Sees) {
            listener.told(Kind.SEES, test.value(), serial, Message.WATCH_SEES.text(source));
        } else if (observed instanceof Observed.Silent silent) {
            listener.told(Kind.SILENT, test.value(), serial, silent.why());
        } else if (observed instanceof Observed.Changed changed) {
            listener.told(Kind.FALTERED, test.value(), serial, changed.shows());
        } else if (observed instanceof Observed.Crossed crossed) {
            listener.told(Kind.CONDITION, test.value(), serial, (crossed.inside() ? Message.WATCH_INSIDE : Message.WATCH_OUTSIDE)
                    .text(crossed.condition(), crossed.value().toString()));
        }
    }
}
