package org.benchwright.engine.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.engine.Demand;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Approval;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Plan;

/** A test being carried out by hand, on clocks that only the caller moves. */
final class Walk {

    static final Actor TECHNICIAN = new Actor("QN", Role.TECHNICIAN);
    static final Actor OTHER_TECHNICIAN = new Actor("TM", Role.TECHNICIAN);
    static final Actor SECOND = new Actor("AB", Role.SECOND_PERSON);
    static final Actor SUPERVISOR = new Actor("SV", Role.SUPERVISOR);
    static final Actor WATCH = new Actor("watch", Role.WATCH);
    static final Actor BENCH = new Actor("bench", Role.BENCH);
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private TestRun run;
    private Instant wall = START;
    private int sitting = 1;
    private Duration offset = Duration.ZERO;

    private Walk(Plan plan, Fact.Opened opening) {
        try {
            run = TestRun.fold(plan, TestRun.open(plan, opening, TECHNICIAN, moment()));
        } catch (RefusedException | DoesNotFollowException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    static Walk open(Plan plan) {
        return new Walk(plan, opening(false));
    }

    static Walk rehearse(Plan plan) {
        return new Walk(plan, opening(true));
    }

    /** A test by a revision that RB prepared and AL approved. */
    static Walk approved(Plan plan) {
        Fact.Opened o = opening(false);
        return new Walk(plan, new Fact.Opened(o.serial(), o.family(), o.procedure(), o.revision(), o.text(), o.plan(), o.station(), o.software(),
                false, o.predecessor(), Optional.of(new Approval(2, "RB", "AL", START))));
    }

    /** A test in which a hazard that was read is remembered for twelve hours. */
    static Walk inShifts(Plan plan) {
        Fact.Opened o = opening(false);
        return new Walk(plan, new Fact.Opened(o.serial(), o.family(), o.procedure(), o.revision(), o.text(), o.plan(), o.station(), o.software(),
                false, o.predecessor(), o.approval(), o.receipt(), o.mended(), o.books(), Optional.of(Duration.ofHours(12))));
    }

    static Fact.Opened opening(boolean rehearsal) {
        Digest text = Digest.of("text".getBytes(StandardCharsets.UTF_8));
        return new Fact.Opened("C16-004711", PlanDraft.FAMILY, PlanDraft.PROCEDURE, PlanDraft.REVISION, text, text, "bench 1", "0.1.0",
                rehearsal, Optional.empty(), Optional.empty());
    }

    static Moment firstMoment() {
        return new Moment(START, 1, Duration.ZERO);
    }

    // ---- time

    Moment moment() {
        return new Moment(wall, sitting, offset);
    }

    Walk after(String time) {
        return after(Parts.duration(time));
    }

    Walk after(Duration time) {
        wall = wall.plus(time);
        offset = offset.plus(time);
        return this;
    }

    /** A watch, which has a clock of its own, tells something at that wall time; the sitting's clock stands where its last event was. */
    Walk wallTo(Instant instant) {
        wall = instant;
        return this;
    }

    /** Only the wall clock moves: somebody has set it. */
    Walk stepWallClock(Duration by) {
        wall = wall.plus(by);
        return tell(new Fact.ClockChanged(by));
    }

    /** The process dies, and another takes the test up again after the gap. */
    Walk interrupt(String gap) {
        Duration time = Parts.duration(gap);
        wall = wall.plus(time);
        sitting++;
        offset = Duration.ZERO;
        return tell(new Fact.Interrupted(time));
    }

    // ---- facts

    Walk tell(Fact fact) {
        return tell(fact, teller(fact));
    }

    /** Who tells it, where everything is as it should be. */
    static Actor teller(Fact fact) {
        if (fact instanceof WatchFact) {
            return WATCH;
        }
        return fact instanceof Fact.Interrupted || fact instanceof Fact.ClockChanged || fact instanceof Fact.BenchProved ? BENCH : TECHNICIAN;
    }

    Walk tell(Fact fact, Actor actor) {
        try {
            run = run.with(run.record(fact, actor, moment()));
        } catch (RefusedException | DoesNotFollowException e) {
            throw new AssertionError(fact + " at " + demand().key() + ": " + e.getMessage(), e);
        }
        return this;
    }

    /** Strikes the last entry. */
    Walk strike() {
        return tell(new Fact.Struck(run.strikeable().orElseThrow().sequence()));
    }

    /** What a watch tells: its event repeats sitting and offset of the last one, and has a wall time of its own. False if it is not taken. */
    boolean watch(Fact fact) {
        Moment then = run.lastMoment();
        try {
            run = run.with(run.record(fact, WATCH, new Moment(wall, then.sitting(), then.offset())));
            return true;
        } catch (RefusedException refused) {
            return false;
        } catch (DoesNotFollowException e) {
            throw new AssertionError(fact + " at " + demand().key() + ": " + e.getMessage(), e);
        }
    }

    /** The refusal of a fact; that it changes nothing is checked on the way. */
    String refusal(Fact fact) {
        return refusal(fact, teller(fact));
    }

    String refusal(Fact fact, Actor actor) {
        Demand before = demand();
        String words = assertThrows(RefusedException.class, () -> run.record(fact, actor, moment())).getMessage();
        assertEquals(before, demand());
        return words;
    }

    /** Answers what is asked as a good unit and a careful technician would. */
    Walk good() {
        Demand asked = demand();
        Answers.waiting(asked, moment()).ifPresent(this::after);
        return tell(Answers.good(asked));
    }

    /** Answers well until this is asked. */
    Walk until(String key) {
        for (int i = 0; i < 200 && !key().equals(key); i++) {
            if (run.ended()) {
                throw new AssertionError(key + " was never asked; the test ended: " + run.reason());
            }
            good();
        }
        return asks(key);
    }

    // ---- what it looks like

    TestRun run() {
        return run;
    }

    Demand demand() {
        return run.demand();
    }

    String key() {
        return demand().key();
    }

    Walk asks(String key) {
        assertEquals(key, key());
        return this;
    }

    List<String> kinds() {
        return run.events().stream().map(e -> e.body().getClass().getSimpleName()).toList();
    }

    long count(Class<?> kind) {
        return run.events().stream().filter(e -> kind.isInstance(e.body())).count();
    }

    <T> List<T> all(Class<T> kind) {
        return run.events().stream().map(TestEvent::body).filter(kind::isInstance).map(kind::cast).toList();
    }

    <T> T last(Class<T> kind) {
        List<T> all = all(kind);
        return all.get(all.size() - 1);
    }

    List<DepartureKind> departures() {
        return all(Derived.DepartureNoted.class).stream().map(Derived.DepartureNoted::kind).toList();
    }
}
