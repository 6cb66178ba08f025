package org.benchwright.engine;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Actor;
import org.benchwright.core.FlashRate;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.internal.Demands;
import org.benchwright.engine.internal.FactGate;
import org.benchwright.engine.internal.Flashes;
import org.benchwright.engine.internal.Holding;
import org.benchwright.engine.internal.ProvedBench;
import org.benchwright.engine.internal.Readings;
import org.benchwright.engine.internal.RunState;
import org.benchwright.engine.internal.Slips;
import org.benchwright.engine.internal.Transitions;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;

/**
 * One carrying-out of a plan on one unit: the fold of its events.
 *
 * <p>Immutable. {@link #record} says which events a fact makes (the fact, and all that follows from it) and changes nothing; once they
 * are durable, {@link #with} gives the test after them. The verdict is derived from the events and cannot be set.
 */
public final class TestRun {

    private final Plan plan;
    private final RunState state;
    private final List<TestEvent> events;

    private TestRun(Plan plan, RunState state, List<TestEvent> events) {
        this.plan = plan;
        this.state = state;
        this.events = events;
    }

    /**
     * The events that open a test.
     *
     * @throws RefusedException if the serial number does not fit the family, or the opening names another procedure than the plan
     */
    public static List<TestEvent> open(Plan plan, Fact.Opened opening, Actor actor, Moment moment) throws RefusedException {
        return new TestRun(plan, new RunState(plan), List.of()).record(opening, actor, moment);
    }

    /**
     * The test that these events make.
     *
     * @param events all events of one test in order, beginning with {@code Opened}
     * @throws DoesNotFollowException if an event does not follow from those before it
     */
    public static TestRun fold(Plan plan, List<TestEvent> events) throws DoesNotFollowException {
        if (events.isEmpty()) {
            throw new DoesNotFollowException(1, "there is no event; the test's opening was expected");
        }
        return new TestRun(plan, new RunState(plan), List.of()).with(events);
    }

    /**
     * The events that this fact makes: itself, then everything derived from it. Nothing is changed. If the record was cut off among what
     * an earlier fact had made, the rest of that comes first.
     *
     * @throws RefusedException if the test does not take the fact where it stands
     */
    public List<TestEvent> record(Fact fact, Actor actor, Moment moment) throws RefusedException {
        RunState next = state.copy();
        List<TestEvent> made = new ArrayList<>(complete(next));
        FactGate.check(next, fact, actor, moment);
        TestEvent told = new TestEvent(next.nextSequence(), moment, actor, fact);
        Transitions.apply(next, told);
        made.add(told);
        made.addAll(complete(next));
        return List.copyOf(made);
    }

    /** Applies what follows from the last fact and has not been applied yet. */
    private static List<TestEvent> complete(RunState state) {
        List<TestEvent> made = new ArrayList<>();
        for (Optional<Derived> next = Transitions.expected(state); next.isPresent(); next = Transitions.expected(state)) {
            TestEvent event = new TestEvent(state.nextSequence(), state.lastMoment(), state.lastActor(), next.get());
            Transitions.apply(state, event);
            made.add(event);
        }
        return made;
    }

    private RunState completed() {
        RunState copy = state.copy();
        complete(copy);
        return copy;
    }

    /**
     * The test after these events.
     *
     * @throws DoesNotFollowException if one of them does not follow from those before it
     */
    public TestRun with(List<TestEvent> more) throws DoesNotFollowException {
        RunState next = state.copy();
        for (TestEvent event : more) {
            follow(next, event);
        }
        List<TestEvent> all = new ArrayList<>(events);
        all.addAll(more);
        return new TestRun(plan, next, List.copyOf(all));
    }

    private static void follow(RunState state, TestEvent event) throws DoesNotFollowException {
        if (event.sequence() != state.nextSequence()) {
            throw new DoesNotFollowException(event.sequence(), "event " + state.nextSequence() + " was expected here");
        }
        Optional<Derived> expected = Transitions.expected(state);
        if (event.body() instanceof Fact fact) {
            if (expected.isPresent()) {
                throw doesNotFollow(event, expected.get().toString());
            }
            try {
                FactGate.check(state, fact, event.actor(), event.moment());
            } catch (RefusedException e) {
                throw doesNotFollow(event, "nothing of that kind: " + e.getMessage());
            }
        } else if (!expected.equals(Optional.of(event.body()))) {
            throw doesNotFollow(event, expected.map(Object::toString).orElse("a fact"));
        } else if (!event.moment().equals(state.lastMoment()) || !event.actor().equals(state.lastActor())) {
            // Deadlines, waits and soaks count from derived events too: their time is the fact's, or it could be shortened here.
            throw doesNotFollow(event, "the same at the moment and by the actor of its fact");
        }
        Transitions.apply(state, event);
    }

    private static DoesNotFollowException doesNotFollow(TestEvent event, String expected) {
        return new DoesNotFollowException(event.sequence(), "found " + event.body() + "; what follows from the events before it is " + expected);
    }

    /** What the test needs next. */
    public Demand demand() {
        Demand asked = Demands.of(completed());
        return asked instanceof Demand.Look look ? byTheWall(look) : asked;
    }

    /**
     * The look that the soak that the test is at waits for, whatever has to be answered before it: after an interruption, or by whoever takes
     * the test over. Empty where the test is at no soak.
     */
    public Optional<Demand.Look> lookToCome() {
        RunState now = completed();
        return now.outcome().isPresent() ? Optional.empty() : now.atSoak().map(soak -> byTheWall(Demands.look(now, soak)));
    }

    /** When the unit was looked at last, as the wall clock would have shown it if it had hung there then as it was set since. */
    private Demand.Look byTheWall(Demand.Look look) {
        Moment since = look.since();
        Duration stepped = Duration.ZERO;
        for (int i = events.size() - 1; i >= 0 && !events.get(i).moment().equals(since); i--) {
            stepped = events.get(i).body() instanceof Fact.ClockChanged changed ? stepped.plus(changed.by()) : stepped;
        }
        Moment shown = new Moment(since.instant().plus(stepped), since.sitting(), since.offset());
        return new Demand.Look(look.soak(), look.begins(), shown, look.due(), look.witnessed());
    }

    /**
     * How long ago the bench may have been proved, if what is asked now energises the unit and the procedure wants to know that the bench
     * is proved, and this test was not told so yet. Then nothing is taken before a {@code BenchProved}.
     *
     * @param now when it would be answered
     */
    public Optional<Duration> benchProofOwed(Instant now) {
        return ProvedBench.owed(completed(), now);
    }

    /** The plan that is carried out. */
    public Plan plan() {
        return plan;
    }

    /** All events so far, in order. */
    public List<TestEvent> events() {
        return events;
    }

    /** The numbers of the events that were struck as slips. */
    public Set<Long> struck() {
        return events.stream().map(TestEvent::body).filter(Fact.Struck.class::isInstance).map(body -> ((Fact.Struck) body).sequence())
                .collect(Collectors.toUnmodifiableSet());
    }

    /** All events so far that hold: neither an entry that was struck as a slip, nor what had followed from it. */
    public List<TestEvent> holding() {
        return Holding.of(events);
    }

    /** How the test was opened. */
    public Fact.Opened opening() {
        return state.opening();
    }

    /** The number of events so far, which is the sequence number of the last one. */
    public long lastSequence() {
        return state.nextSequence() - 1;
    }

    /** The verdict; empty while the test is open, and always for a rehearsal. */
    public Optional<Verdict> verdict() {
        return rehearsal() ? Optional.empty() : state.outcome();
    }

    /** What a rehearsal that has ended would have come to; empty for a test. */
    public Optional<Verdict> wouldBe() {
        return rehearsal() ? state.outcome() : Optional.empty();
    }

    /** Why it ended, or is about to end; empty as long as it is not known. */
    public String reason() {
        return state.reason();
    }

    /** True if this is a rehearsal. */
    public boolean rehearsal() {
        return opening().rehearsal();
    }

    /** True once nothing is left to do. */
    public boolean ended() {
        return state.outcome().isPresent();
    }

    /** Where the test is; empty before the first step is reached, on a soak, and after the end. */
    public Optional<Place> place() {
        return state.openPlace();
    }

    /** What is live now. */
    public Set<String> live() {
        return Set.copyOf(state.live());
    }

    /** Time witnessed in the soak that is under way; zero if there is none. */
    public Duration witnessed() {
        return state.soak().witnessed();
    }

    /** True while a soak is under way. */
    public boolean onSoak() {
        return state.soak().begun();
    }

    /** The soak that is under way, if one is. */
    public Optional<SoakStage> soakUnderWay() {
        return state.soakUnderWay();
    }

    /** The number of the last watch on record; 0 if there was none. */
    public int lastWatch() {
        return state.lastWatch();
    }

    /** The last observation, as long as it can be struck. */
    public Optional<TestEvent> strikeable() {
        return state.strikeable().map(sequence -> events.get((int) (sequence - 1)));
    }

    /**
     * What a reading may have been meant for, if it looks like a slip of the decimal point; empty too if it was questioned already and is
     * entered once more.
     *
     * @param fact what is about to be told
     */
    public Optional<Fact.Questioned> slipIn(Fact fact) {
        Optional<Fact.Questioned> doubt = Slips.in(demand(), fact);
        return doubt.filter(d -> questioned().filter(q -> q.value().sameSize(d.value())).isEmpty());
    }

    /** A reading that was questioned as a slip and is neither entered once more nor replaced by another yet. */
    public Optional<Fact.Questioned> questioned() {
        return state.questioned();
    }

    /** The rate that a lamp must flash at, if this expectation can be answered by tapping along with it. */
    public static Optional<FlashRate> tapsAlong(Action.Expect expect) {
        return Flashes.rate(expect);
    }

    /** True if what is demanded is to switch something off before the step that the test is at is begun: its words are not about that. */
    public boolean switchesOffFirst() {
        return demand() instanceof Demand.Switch && Demands.itemToSwitchOff(completed()).isPresent();
    }

    /** The worst of the cells of a grid that were read so far, in words; empty where none is being read. */
    public Optional<String> worstCellSoFar() {
        return demand() instanceof Demand.ReadCell ? Readings.worstSoFar(completed()) : Optional.empty();
    }

    /** Where the unit stands in the rack; empty where nobody said so. */
    public Optional<String> position() {
        return Optional.of(state.position()).filter(at -> !at.isEmpty());
    }

    /** Who has the test: opened it, or took it over since. */
    public Optional<Actor> holder() {
        return state.holder();
    }

    /** The moment of the last event. */
    public Moment lastMoment() {
        return state.lastMoment();
    }
}
