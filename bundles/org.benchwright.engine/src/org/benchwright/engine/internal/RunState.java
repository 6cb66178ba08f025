package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Actor;
import org.benchwright.core.Verdict;
import org.benchwright.engine.Place;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;

/**
 * The state of a test after its events so far. Confined to one fold: whoever wants to look ahead works on a {@link #copy}.
 *
 * <p>It holds data and answers simple questions about it; {@link Transitions} and its neighbours hold the rules.
 */
public final class RunState {

    private final Plan plan;
    private long nextSequence = 1;
    private Optional<Fact.Opened> opening = Optional.empty();
    private People people = People.NOBODY;
    private TestAge age = TestAge.UNOPENED;
    private Optional<Actor> lastActor = Optional.empty();

    /** What must follow before the next fact, in order. */
    private final Deque<Derived> following = new ArrayDeque<>();

    private final List<String> openPreconditions = new ArrayList<>();
    private final Memory memory = new Memory();
    private final Set<String> live = new LinkedHashSet<>();
    private final Set<String> acknowledgedHere = new HashSet<>();
    /** What was live when the open step was opened: what it takes for granted. */
    private final Set<String> liveAtOpening = new HashSet<>();

    private Spot spot = new Spot(0, 0);
    private Spot coldSpot = new Spot(0, 0);
    private boolean stepOpen;
    private int action;
    private Optional<Stamp> stageSince = Optional.empty();
    private Derived.Outcome stepOutcome = Derived.Outcome.CONFORMS;
    private Progress progress = Progress.NONE;
    private SoakProgress soak = SoakProgress.NONE;
    private SoakWatch watch = SoakWatch.NONE;
    private boolean powerAsked;
    private SwitchOff switchOff = SwitchOff.NOTHING;
    private Optional<PendingRelease> release = Optional.empty();
    private Optional<PendingMove> move = Optional.empty();
    private Optional<Move.Conclude> conclusion = Optional.empty();
    private Optional<Verdict> outcome = Optional.empty();
    private Optional<Snapshot> beforeLast = Optional.empty();
    private Optional<Fact.Questioned> questioned = Optional.empty();
    /** Where the unit stands and who has the test: striking an entry moves neither. */
    private String position = "";
    private Optional<Actor> holder = Optional.empty();

    /** The state before the last observation, as long as that can be struck. */
    record Snapshot(long sequence, RunState state) {
    }

    /** The state of a test that is not opened. */
    public RunState(Plan plan) {
        this.plan = plan;
    }

    /** An independent copy. */
    public RunState copy() {
        RunState c = new RunState(plan);
        c.nextSequence = nextSequence;
        c.opening = opening;
        c.people = people;
        c.age = age;
        c.lastActor = lastActor;
        c.position = position;
        c.holder = holder;
        c.takeOver(this);
        c.beforeLast = beforeLast;
        return c;
    }

    /**
     * Everything as it was in {@code before}, but at this place in the record and with the same people. What may have been switched on
     * since stays live: striking an entry moves no switch.
     */
    void revertTo(RunState before) {
        Set<String> mayBeLive = new LinkedHashSet<>(live);
        takeOver(before);
        nothingIsLaterThanNow();
        live.addAll(mayBeLive);
        beforeLast = Optional.empty();
    }

    private void takeOver(RunState from) {
        replace(following, from.following);
        replace(openPreconditions, from.openPreconditions);
        replace(live, from.live);
        replace(acknowledgedHere, from.acknowledgedHere);
        replace(liveAtOpening, from.liveAtOpening);
        memory.takeOver(from.memory);
        spot = from.spot;
        coldSpot = from.coldSpot;
        stepOpen = from.stepOpen;
        action = from.action;
        stageSince = from.stageSince;
        stepOutcome = from.stepOutcome;
        progress = from.progress;
        questioned = from.questioned;
        soak = from.soak;
        watch = from.watch;
        powerAsked = from.powerAsked;
        switchOff = from.switchOff;
        release = from.release;
        move = from.move;
        conclusion = from.conclusion;
        outcome = from.outcome;
    }

    private static <T> void replace(Collection<T> target, Collection<T> source) {
        target.clear();
        target.addAll(source);
    }

    // ---- the plan seen from here

    Plan plan() {
        return plan;
    }

    boolean makingSafe() {
        return spot.inMakeSafe(plan);
    }

    Stage stage() {
        return spot.stageIn(plan);
    }

    /** The soak that the test has arrived at. */
    public Optional<SoakStage> atSoak() {
        return stage() instanceof SoakStage s ? Optional.of(s) : Optional.empty();
    }

    Optional<Step> atStep() {
        return spot.stepIn(plan);
    }

    /** The current step; only where the stage has steps. */
    Step step() {
        return atStep().orElseThrow(() -> new IllegalStateException("no step at " + spot));
    }

    /** The current action; only while a step is open. */
    Action action() {
        return step().actions().get(action);
    }

    /** Where the open step is. */
    public Optional<Place> openPlace() {
        return atStep().filter(s -> opening.isPresent() && outcome.isEmpty()).map(s -> new Place(stage(), s, makingSafe()));
    }

    Place place() {
        return new Place(stage(), step(), makingSafe());
    }

    /** The name of the place for records: the step's, or the soak's own. */
    String stepName() {
        return spot.stepNameIn(plan);
    }

    // ---- plain reading

    /** The sequence number that the next event gets. */
    public long nextSequence() {
        return nextSequence;
    }

    /** How the test was opened. */
    public Fact.Opened opening() {
        return opening.orElseThrow(() -> new IllegalStateException("the test is not opened"));
    }

    boolean opened() {
        return opening.isPresent();
    }

    /** Who has worked on it, and who has released in it. */
    People people() {
        return people;
    }

    /** How old it is. */
    TestAge age() {
        return age;
    }

    /** The last event, with the test's age. */
    Stamp now() {
        return age.now();
    }

    /** The moment of the last event. */
    public Moment lastMoment() {
        return now().moment();
    }

    /** Who told the last fact. */
    public Actor lastActor() {
        return lastActor.orElseThrow(() -> new IllegalStateException("the test is not opened"));
    }

    /** Time from then to the last event. */
    Duration since(Stamp then) {
        return now().age().minus(then.age());
    }

    /** What is live. */
    public Set<String> live() {
        return live;
    }

    /** The soak under way, or none. */
    public SoakProgress soak() {
        return soak;
    }

    /** The soak that is under way, if one is. */
    public Optional<SoakStage> soakUnderWay() {
        return SoakRules.underWay(this);
    }

    /** The number of the last watch on record; 0 if there was none. */
    public int lastWatch() {
        return watch.number();
    }

    SoakWatch watch() {
        return watch;
    }

    /** What the test has come to; empty while it is open. */
    public Optional<Verdict> outcome() {
        return outcome;
    }

    /** Why it ends or ended. */
    public String reason() {
        return conclusion.map(Move.Conclude::reason).orElse("");
    }

    /** The sequence number of the observation that can be struck. */
    public Optional<Long> strikeable() {
        return beforeLast.map(Snapshot::sequence);
    }

    Deque<Derived> following() {
        return following;
    }

    List<String> openPreconditions() {
        return openPreconditions;
    }

    Memory memory() {
        return memory;
    }

    Set<String> acknowledgedHere() {
        return acknowledgedHere;
    }

    Spot spot() {
        return spot;
    }

    /** Whether the open step could be opened again: what was live then is live still. */
    boolean startsAsBefore() {
        return live.containsAll(liveAtOpening);
    }

    Spot coldSpot() {
        return coldSpot;
    }

    boolean stepOpen() {
        return stepOpen;
    }

    int actionIndex() {
        return action;
    }

    Optional<Stamp> stageSince() {
        return stageSince;
    }

    Derived.Outcome stepOutcome() {
        return stepOutcome;
    }

    Progress progress() {
        return progress;
    }

    /** A reading that was questioned and is not entered once more yet. */
    public Optional<Fact.Questioned> questioned() {
        return questioned;
    }

    /** Where the unit stands in the rack; empty where nobody said so. */
    public String position() {
        return position;
    }

    /** Who has the test: opened it, or took it over or up since. */
    public Optional<Actor> holder() {
        return holder;
    }

    boolean powerAsked() {
        return powerAsked;
    }

    SwitchOff switchOff() {
        return switchOff;
    }

    Optional<PendingRelease> release() {
        return release;
    }

    Optional<PendingMove> move() {
        return move;
    }

    Optional<Move.Conclude> conclusion() {
        return conclusion;
    }

    Optional<Snapshot> beforeLast() {
        return beforeLast;
    }

    /** The state before the observation of that number, for striking it. */
    RunState strikeSnapshot(long sequence) {
        return beforeLast.filter(b -> b.sequence() == sequence).map(Snapshot::state)
                .orElseThrow(() -> new IllegalStateException("observation " + sequence + " cannot be struck"));
    }

    // ---- plain writing, for the rules only

    void open(Fact.Opened how) {
        opening = Optional.of(how);
    }

    void passed(TestEvent event) {
        nextSequence = event.sequence() + 1;
        age = age.after(event);
        lastActor = Optional.of(event.actor());
        if (stageSince.isEmpty() && stepOpen && !age.toldByWatch()) {
            stageSince = age.last();
        }
        if (!age.toldByWatch()) {
            nothingIsLaterThanNow();
        }
    }

    /** Where a watch told by a wall clock that was put forward, it told of a time that the sitting's own clock has not come to. */
    private void nothingIsLaterThanNow() {
        soak = soak.notSeenAfter(now().age());
        progress = progress.notWaitingSinceLaterThan(now());
    }

    /** Somebody told a fact. */
    void told(Fact fact, Actor by) {
        people = people.after(fact, by);
    }

    /** Arrives before a step or soak, nothing of it begun. */
    void arrive(Spot at) {
        boolean otherStage = at.stage() != spot.stage();
        spot = at;
        stepOpen = false;
        action = 0;
        stepOutcome = Derived.Outcome.CONFORMS;
        progress(Progress.NONE);
        release = Optional.empty();
        acknowledgedHere.clear();
        if (otherStage) {
            stageSince = Optional.empty();
        }
    }

    void openStep(String name) {
        stepOpen = true;
        action = 0;
        stepOutcome = Derived.Outcome.CONFORMS;
        progress(Progress.NONE);
        memory.visit(name);
        replace(liveAtOpening, live);
        memory.marks().keySet().removeIf(mark -> step().actions().stream().anyMatch(a -> a instanceof Action.Mark && a.id().equals(mark)));
        if (live.isEmpty() && !makingSafe()) {
            coldSpot = spot;
        }
        if (stageSince.isEmpty() && !age.toldByWatch()) {
            // A stage that a watch has led to begins when somebody comes.
            stageSince = age.last();
        }
    }

    void to(int nextAction) {
        action = nextAction;
        progress(Progress.NONE);
        release = Optional.empty();
    }

    void worsenStep(Derived.Outcome to) {
        if (stepOutcome == Derived.Outcome.CONFORMS || to != Derived.Outcome.CONFORMS && to != Derived.Outcome.RELEASED) {
            stepOutcome = to;
        }
    }

    void progress(Progress now) {
        progress = now;
        questioned = Optional.empty();
    }

    void question(Fact.Questioned reading) {
        questioned = Optional.of(reading);
    }

    void place(String at) {
        position = at;
    }

    /** Somebody takes the test: what others have read of hazards, this person has not. */
    void hold(Actor by) {
        holder = Optional.of(by);
        memory.acknowledged().clear();
        acknowledgedHere.clear();
    }

    void soak(SoakProgress now) {
        soak = now;
    }

    void watch(SoakWatch now) {
        watch = now;
    }

    void askPower(boolean ask) {
        powerAsked = ask;
    }

    void switchOff(SwitchOff first) {
        switchOff = first;
    }

    void release(Optional<PendingRelease> pending) {
        release = pending;
    }

    void move(Optional<PendingMove> pending) {
        move = pending;
    }

    void conclude(Move.Conclude with) {
        conclusion = Optional.of(with);
    }

    void end(Verdict with) {
        outcome = Optional.of(with);
        beforeLast = Optional.empty();
    }

    void keepForStrike(Optional<Snapshot> snapshot) {
        beforeLast = snapshot;
    }
}
