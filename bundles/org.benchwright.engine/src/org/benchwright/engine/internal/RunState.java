package org.benchwright.engine.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Verdict;
import org.benchwright.engine.Place;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;
import org.benchwright.engine.plan.WorkStage;

/**
 * The state of a test after its events so far. Confined to one fold: whoever wants to look ahead works on a {@link #copy}.
 *
 * <p>It holds data and answers simple questions about it; {@link Transitions} and its neighbours hold the rules.
 */
public final class RunState {

    private final Plan plan;
    private long nextSequence = 1;
    private Optional<Fact.Opened> opening = Optional.empty();
    private final Set<String> workers = new HashSet<>();
    private Optional<Moment> lastMoment = Optional.empty();

    /** What must follow before the next fact, in order. */
    private final Deque<Derived> following = new ArrayDeque<>();

    private final List<String> openPreconditions = new ArrayList<>();
    private final Map<String, Moment> preconditionsMet = new HashMap<>();
    private final Map<String, Fact.InstrumentNamed> instruments = new HashMap<>();
    private final Set<String> live = new LinkedHashSet<>();
    private final Set<String> acknowledged = new HashSet<>();
    private final Set<String> acknowledgedHere = new HashSet<>();
    private final Map<String, Moment> marks = new HashMap<>();
    private final Map<String, Integer> timesTaken = new HashMap<>();
    private final Map<String, Integer> visits = new HashMap<>();

    private Spot spot = new Spot(0, 0);
    private Spot coldSpot = new Spot(0, 0);
    private boolean stepOpen;
    private int action;
    private Optional<Moment> stageSince = Optional.empty();
    private Derived.Outcome stepOutcome = Derived.Outcome.CONFORMS;
    private Progress progress = Progress.NONE;
    private Soak soak = Soak.NONE;
    private boolean powerAsked;
    private Optional<PendingRelease> release = Optional.empty();
    private Optional<PendingMove> move = Optional.empty();
    private Optional<Move.Conclude> conclusion = Optional.empty();
    private Optional<Verdict> outcome = Optional.empty();
    private Optional<Snapshot> beforeLast = Optional.empty();

    /** A place in the plan by index; the stage index one past the last stage is make safe. */
    record Spot(int stage, int step) {
    }

    /** A release that is being waited for. */
    record PendingRelease(String check, Move.ReleaseBy asked, String because) {
    }

    /** A move whose derived event is on its way: where it goes, and what is counted when it is taken. */
    record PendingMove(Spot target, String counted) {
    }

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
        c.workers.addAll(workers);
        c.lastMoment = lastMoment;
        c.following.addAll(following);
        c.openPreconditions.addAll(openPreconditions);
        c.preconditionsMet.putAll(preconditionsMet);
        c.instruments.putAll(instruments);
        c.live.addAll(live);
        c.acknowledged.addAll(acknowledged);
        c.acknowledgedHere.addAll(acknowledgedHere);
        c.marks.putAll(marks);
        c.timesTaken.putAll(timesTaken);
        c.visits.putAll(visits);
        c.spot = spot;
        c.coldSpot = coldSpot;
        c.stepOpen = stepOpen;
        c.action = action;
        c.stageSince = stageSince;
        c.stepOutcome = stepOutcome;
        c.progress = progress;
        c.soak = soak;
        c.powerAsked = powerAsked;
        c.release = release;
        c.move = move;
        c.conclusion = conclusion;
        c.outcome = outcome;
        c.beforeLast = beforeLast;
        return c;
    }

    // ---- the plan seen from here

    Plan plan() {
        return plan;
    }

    boolean makingSafe() {
        return spot.stage() == plan.stages().size();
    }

    Stage stage() {
        return stage(spot);
    }

    Stage stage(Spot at) {
        return at.stage() == plan.stages().size() ? plan.makeSafe() : plan.stages().get(at.stage());
    }

    /** The soak that the test has arrived at. */
    Optional<SoakStage> atSoak() {
        return stage() instanceof SoakStage s ? Optional.of(s) : Optional.empty();
    }

    Optional<Step> atStep() {
        return stage() instanceof WorkStage w ? Optional.of(w.steps().get(spot.step())) : Optional.empty();
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
        return atStep().map(Step::name).orElse("");
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

    /** Everybody who carried out some of it, by id. */
    Set<String> workers() {
        return workers;
    }

    /** The moment of the last event. */
    public Moment lastMoment() {
        return lastMoment.orElseThrow(() -> new IllegalStateException("the test is not opened"));
    }

    boolean hasMoment() {
        return lastMoment.isPresent();
    }

    /** What is live. */
    public Set<String> live() {
        return live;
    }

    /** The soak under way, or none. */
    public Soak soak() {
        return soak;
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

    Map<String, Moment> preconditionsMet() {
        return preconditionsMet;
    }

    Map<String, Fact.InstrumentNamed> instruments() {
        return instruments;
    }

    Set<String> acknowledged() {
        return acknowledged;
    }

    Set<String> acknowledgedHere() {
        return acknowledgedHere;
    }

    Map<String, Moment> marks() {
        return marks;
    }

    int timesTaken(String counted) {
        return timesTaken.getOrDefault(counted, 0);
    }

    int visits(String stepName) {
        return visits.getOrDefault(stepName, 0);
    }

    Spot spot() {
        return spot;
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

    Optional<Moment> stageSince() {
        return stageSince;
    }

    Derived.Outcome stepOutcome() {
        return stepOutcome;
    }

    Progress progress() {
        return progress;
    }

    boolean powerAsked() {
        return powerAsked;
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

    void worker(String id) {
        workers.add(id);
    }

    void passed(long sequence, Moment moment) {
        nextSequence = sequence + 1;
        lastMoment = Optional.of(moment);
    }

    void count(String counted) {
        timesTaken.merge(counted, 1, Integer::sum);
    }

    /** Arrives before a step or soak, nothing of it begun. */
    void arrive(Spot at) {
        boolean otherStage = at.stage() != spot.stage();
        spot = at;
        stepOpen = false;
        action = 0;
        stepOutcome = Derived.Outcome.CONFORMS;
        progress = Progress.NONE;
        release = Optional.empty();
        acknowledgedHere.clear();
        if (otherStage) {
            stageSince = Optional.empty();
        }
    }

    void openStep(String name, Moment moment) {
        stepOpen = true;
        action = 0;
        stepOutcome = Derived.Outcome.CONFORMS;
        progress = Progress.NONE;
        visits.merge(name, 1, Integer::sum);
        marks.keySet().removeIf(mark -> step().actions().stream().anyMatch(a -> a instanceof Action.Mark && a.id().equals(mark)));
        if (live.isEmpty() && !makingSafe()) {
            coldSpot = spot;
        }
        if (stageSince.isEmpty()) {
            stageSince = Optional.of(moment);
        }
    }

    void to(int nextAction) {
        action = nextAction;
        progress = Progress.NONE;
        release = Optional.empty();
    }

    void worsenStep(Derived.Outcome to) {
        if (stepOutcome == Derived.Outcome.CONFORMS || to != Derived.Outcome.CONFORMS && to != Derived.Outcome.RELEASED) {
            stepOutcome = to;
        }
    }

    void progress(Progress now) {
        progress = now;
    }

    void soak(Soak now) {
        soak = now;
    }

    void askPower(boolean ask) {
        powerAsked = ask;
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

    /** Everything as it was in {@code before}, but at this place in the record. */
    void revertTo(RunState before) {
        RunState c = before.copy();
        long sequence = nextSequence;
        Optional<Moment> moment = lastMoment;
        following.clear();
        following.addAll(c.following);
        replace(openPreconditions, c.openPreconditions);
        replace(preconditionsMet, c.preconditionsMet);
        replace(instruments, c.instruments);
        replace(live, c.live);
        replace(acknowledged, c.acknowledged);
        replace(acknowledgedHere, c.acknowledgedHere);
        replace(marks, c.marks);
        replace(timesTaken, c.timesTaken);
        replace(visits, c.visits);
        spot = c.spot;
        coldSpot = c.coldSpot;
        stepOpen = c.stepOpen;
        action = c.action;
        stageSince = c.stageSince;
        stepOutcome = c.stepOutcome;
        progress = c.progress;
        soak = c.soak;
        powerAsked = c.powerAsked;
        release = c.release;
        move = c.move;
        conclusion = c.conclusion;
        outcome = c.outcome;
        beforeLast = Optional.empty();
        nextSequence = sequence;
        lastMoment = moment;
    }

    private static <T> void replace(java.util.Collection<T> target, java.util.Collection<T> source) {
        target.clear();
        target.addAll(source);
    }

    private static <K, V> void replace(Map<K, V> target, Map<K, V> source) {
        target.clear();
        target.putAll(source);
    }

    /**
     * How far the current action has come.
     *
     * @param opened  expectations whose first tone was given
     * @param closed  expectations whose last tone was given
     * @param seen    answers by expectation
     * @param readings readings of a measurement or grid
     * @param owed     true while the reason of a repeat is owed
     * @param items   items of a choice confirmed so far
     * @param waiting when a waiting time began
     */
    record Progress(Set<String> opened, Set<String> closed, Map<String, Fact.Seen> seen, List<Fact> readings, boolean owed,
            Set<String> items, Optional<Moment> waiting) {
        static final Progress NONE = new Progress(Set.of(), Set.of(), Map.of(), List.of(), false, Set.of(), Optional.empty());

        Progress tone(String check, boolean opens, boolean closes) {
            return new Progress(opens ? plus(opened, check) : opened, closes ? plus(closed, check) : closed, seen, readings, owed, items,
                    waiting);
        }

        Progress answered(Fact.Seen answer) {
            Map<String, Fact.Seen> more = new LinkedHashMap<>(seen);
            more.put(answer.check(), answer);
            return new Progress(opened, closed, more, readings, owed, items, waiting);
        }

        Progress read(Fact reading) {
            List<Fact> more = new ArrayList<>(readings);
            more.add(reading);
            return new Progress(opened, closed, seen, List.copyOf(more), owed, items, waiting);
        }

        Progress owing(boolean reason) {
            return new Progress(opened, closed, seen, readings, reason, items, waiting);
        }

        Progress confirmed(String item) {
            return new Progress(opened, closed, seen, readings, owed, plus(items, item), waiting);
        }

        Progress waitingSince(Moment moment) {
            return new Progress(opened, closed, seen, readings, owed, items, Optional.of(moment));
        }

        private static Set<String> plus(Set<String> set, String element) {
            Set<String> more = new HashSet<>(set);
            more.add(element);
            return more;
        }
    }
}
