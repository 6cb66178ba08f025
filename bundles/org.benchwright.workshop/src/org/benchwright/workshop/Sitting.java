package org.benchwright.workshop;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.Message;

/**
 * One process's work on one test. What {@link #record} has returned from is durable; what it refused has left no trace.
 *
 * <p>Used by one thread.
 */
public final class Sitting {

    /** Wall time may differ from monotonic time by as much before it counts as stepped. */
    public static final Duration CLOCK_TOLERANCE = Duration.ofSeconds(2);

    static final Actor BENCH = new Actor("bench", Role.BENCH);

    private final TestId test;
    private final Ledger ledger;
    private final KeptTests kept;
    private final Signer benchKey;
    private final Station station;
    private final BenchTime time;
    private final Actor technician;
    private final int number;
    private final Duration began;
    private TestRun run;
    private boolean sealed;
    private boolean over;
    private Instant lastWall;
    private Duration lastElapsed;

    /** What a sitting works with. */
    record Tools(Ledger ledger, KeptTests kept, Signer benchKey, Station station, BenchTime time) {
    }

    Sitting(TestId test, Tools tools, Actor technician, TestRun run, boolean sealed, Moment begin) {
        this.test = test;
        this.ledger = tools.ledger();
        this.kept = tools.kept();
        this.benchKey = tools.benchKey();
        this.station = tools.station();
        this.time = tools.time();
        this.technician = technician;
        this.run = run;
        this.sealed = sealed;
        this.number = begin.sitting();
        this.lastWall = time.now();
        this.lastElapsed = time.elapsed();
        this.began = lastElapsed.minus(begin.offset());
    }

    /** The test's id. */
    public String test() {
        return test.value();
    }

    /** The test as it is in the ledger as far as this sitting knows. */
    public TestRun run() {
        return run;
    }

    /** Who works. */
    public Actor technician() {
        return technician;
    }

    /** True once the test has ended and is sealed. */
    public boolean sealed() {
        return sealed;
    }

    /** The present moment in this sitting. */
    public Moment moment() {
        return new Moment(time.now().truncatedTo(ChronoUnit.MILLIS), number, time.elapsed().minus(began).truncatedTo(ChronoUnit.MILLIS));
    }

    /** Records a fact that the technician told, see {@link #record(Fact, Actor)}. */
    public List<TestEvent> record(Fact fact) throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        return record(fact, technician);
    }

    /**
     * Records a fact and all that follows from it. When this returns it is durable. If wall time was stepped since the last fact, that is
     * recorded first. The end of the test is sealed.
     *
     * @return the fact's event and those derived from it
     * @throws RefusedException      if the test does not take the fact where it stands; nothing was recorded
     * @throws OvertakenException    if somebody else wrote to the test meanwhile; nothing was recorded, and {@link #run()} is up to date
     * @throws StoreException        if the ledger can't be written; nothing was recorded
     * @throws FaultyRecordException if what somebody else wrote meanwhile does not follow
     */
    public List<TestEvent> record(Fact fact, Actor actor)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        if (over) {
            throw new RefusedException(Message.REFUSED_SITTING_OVER.text(test.value()));
        }
        Fact asKept = kept.asKept(fact);
        noteClockStep();
        List<TestEvent> made = append(run.record(asKept, actor, moment()));
        sealIfEnded();
        return made;
    }

    private void noteClockStep() throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        Instant wall = time.now();
        Duration elapsed = time.elapsed();
        Duration step = Duration.between(lastWall, wall).minus(elapsed.minus(lastElapsed)).truncatedTo(ChronoUnit.MILLIS);
        lastWall = wall;
        lastElapsed = elapsed;
        if (step.abs().compareTo(CLOCK_TOLERANCE) > 0) {
            append(run.record(new Fact.ClockChanged(step), BENCH, moment()));
        }
    }

    private List<TestEvent> append(List<TestEvent> events) throws OvertakenException, StoreException, FaultyRecordException {
        try {
            ledger.append(test, run.lastSequence(), kept.drafts(test, events));
        } catch (SequenceConflictException conflict) {
            refold();
            throw new OvertakenException(Message.OVERTAKEN.text(test.value()), conflict);
        } catch (LedgerException e) {
            throw new StoreException(e.getMessage(), e);
        }
        try {
            run = run.with(events);
        } catch (DoesNotFollowException e) {
            throw new IllegalStateException("the engine does not follow its own events", e);
        }
        return events;
    }

    /** Takes over what the ledger holds. A later sitting of somebody else ends this one: its clock is not comparable with ours. */
    private void refold() throws StoreException, FaultyRecordException {
        KeptTest now = kept.read(ledger, test);
        run = now.run();
        sealed = now.sealed();
        over = sealed || run.lastMoment().sitting() > number;
    }

    /** True if the test was taken up elsewhere: {@link Workshop#resume} takes it up again here. */
    public boolean over() {
        return over;
    }

    void sealIfEnded() throws OvertakenException, StoreException, FaultyRecordException {
        if (!run.ended() || sealed) {
            return;
        }
        Moment now = moment();
        try {
            ledger.seal(test, run.lastSequence(), now.instant(), now.sitting(), now.offset(), BENCH, benchKey, station.name());
            sealed = true;
        } catch (SequenceConflictException conflict) {
            refold();
            throw new OvertakenException(Message.OVERTAKEN.text(test.value()), conflict);
        } catch (LedgerException e) {
            throw new StoreException(e.getMessage(), e);
        }
    }
}
