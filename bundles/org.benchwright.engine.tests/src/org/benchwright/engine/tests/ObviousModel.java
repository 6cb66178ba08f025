package org.benchwright.engine.tests;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.Sight;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.WorkStage;

/**
 * A test in slow and obvious code that shares nothing with the engine: for each question it goes through all facts again, looks things up
 * in a list of what happened, and treats a struck entry as one that was never made. Derived events are not read; they are retold, without
 * their words, as {@link #story}.
 */
final class ObviousModel {

    private static final Duration LATEST_TONE = Duration.ofSeconds(1);
    private static final int VOIDS = 3;

    final Plan plan;
    final ModelLog log = new ModelLog();
    List<String> story = new ArrayList<>();
    final Set<String> live = new LinkedHashSet<>();
    Duration now = Duration.ZERO;
    int sitting = 1;

    boolean rehearsal;
    int stage;
    int step;
    int action;
    boolean inStep;
    private Outcome worst = Outcome.CONFORMS;
    /** Facts told for the current action, with their times. */
    final List<Told> told = new ArrayList<>();
    final List<String> openPreconditions = new ArrayList<>();
    Optional<WaitingFor> release = Optional.empty();
    boolean powerAsked;
    boolean offBeforePowerUp;
    boolean offBeforeTheEnd;
    final ObviousSoak soak = new ObviousSoak(this);
    private Optional<Verdict> concluding = Optional.empty();
    Optional<Verdict> ended = Optional.empty();

    /** A fact with the age of the test when it was told. */
    record Told(Fact fact, Duration age, int sitting) {
    }

    /** A release that is waited for. */
    record WaitingFor(String check, Role by) {
    }

    private ObviousModel(Plan plan) {
        this.plan = plan;
    }

    static ObviousModel of(Plan plan, List<TestEvent> events) {
        ObviousModel model = new ObviousModel(plan);
        Duration age = Duration.ZERO;
        Moment before = events.get(0).moment();
        for (TestEvent event : events) {
            age = age.plus(passed(before, event.moment()));
            before = event.moment();
            if (event.body() instanceof Fact.Struck struck) {
                ObviousModel unstruck = of(plan, events.subList(0, (int) struck.sequence() - 1));
                unstruck.live.addAll(model.live);
                unstruck.story = model.story;
                model = unstruck;
            }
            if (event.body() instanceof Fact fact) {
                model.now = age;
                model.sitting = event.moment().sitting();
                model.take(fact);
                model.advance();
            }
        }
        return model;
    }

    /** Within a sitting the monotonic clock tells; between two only wall time does, and never less than nothing. */
    private static Duration passed(Moment from, Moment to) {
        if (from.sitting() == to.sitting()) {
            return to.offset().minus(from.offset());
        }
        Duration gap = Duration.between(from.instant(), to.instant());
        return gap.isNegative() ? Duration.ZERO : gap;
    }

    void say(String line) {
        story.add(line);
    }

    void note(String what, String about) {
        log.add(what, about, now, sitting);
    }

    // ---- the place

    boolean makingSafe() {
        return stage == plan.stages().size();
    }

    Stage here() {
        return makingSafe() ? plan.makeSafe() : plan.stages().get(stage);
    }

    List<Action> actions() {
        return ((WorkStage) here()).steps().get(step).actions();
    }

    Action current() {
        return actions().get(action);
    }

    String stepName() {
        return here() instanceof WorkStage w ? w.steps().get(step).name() : "";
    }

    /** The current action and the expectations that run together with it. */
    List<Action> group() {
        int end = action + 1;
        while (current() instanceof Action.Expect && end < actions().size() && actions().get(end) instanceof Action.Expect) {
            end++;
        }
        return actions().subList(action, end);
    }

    // ---- facts

    private void take(Fact fact) {
        if (fact instanceof Fact.Opened o) {
            rehearsal = o.rehearsal();
            plan.preconditions().forEach(p -> openPreconditions.add(p.name()));
            note("stage", "");
            arrive(firstInOrder(0), 0);
        } else if (fact instanceof Fact.PreconditionAnswered a) {
            answered(a);
        } else if (fact instanceof Fact.HazardAcknowledged h) {
            note("hazard", h.hazard());
        } else if (fact instanceof Fact.InstrumentNamed i) {
            note("instrument", i.instrument());
        } else if (fact instanceof Fact.ClockChanged) {
            say("departure CLOCK_CHANGED");
        } else if (fact instanceof Fact.Abandoned) {
            abandoned();
        } else if (fact instanceof Fact.Interrupted) {
            interrupted();
        } else if (fact instanceof Fact.PowerAnswered p) {
            powerAsked = false;
            if (p.kept()) {
                goOn();
            } else {
                powerLost();
            }
        } else if (fact instanceof Fact.Looked l) {
            soak.looked(l);
        } else if (!(fact instanceof Fact.Noted) && !(fact instanceof Fact.Struck)) {
            takeInStep(fact);
        }
    }

    private void takeInStep(Fact fact) {
        if (fact instanceof Fact.Switched w) {
            switched(w);
            return;
        }
        told.add(new Told(fact, now, sitting));
        if (fact instanceof Fact.Marked m) {
            note("mark", m.mark());
            next();
        } else if (fact instanceof Fact.ToneGiven || fact instanceof Fact.Seen) {
            expectations();
        } else if (fact instanceof Fact.Measured) {
            measured((Action.Measure) current());
        } else if (fact instanceof Fact.CellRead) {
            cellRead((Action.Grid) current());
        } else if (fact instanceof Fact.Confirmed c) {
            check(c.check(), c.yes(), ((Action.Confirm) current()).failed());
        } else if (fact instanceof Fact.Compared c) {
            boolean same = c.left().replaceAll("\\s", "").equalsIgnoreCase(c.right().replaceAll("\\s", ""));
            check(c.check(), same, ((Action.Compare) current()).failed());
        } else if (fact instanceof Fact.ItemConfirmed c) {
            item(c, (Action.Choose) current());
        } else if (fact instanceof Fact.Released r) {
            released(r);
        } else if (!(fact instanceof Fact.ReasonGiven)) {
            next();
        }
    }

    private void answered(Fact.PreconditionAnswered a) {
        Precondition asked = plan.preconditions().stream().filter(p -> p.name().equals(a.precondition())).findFirst().orElseThrow();
        boolean inside = asked.reading().isEmpty() || asked.reading().get().contains(a.reading().orElseThrow());
        if (a.met() && inside) {
            openPreconditions.remove(a.precondition());
            note("met", a.precondition());
        } else {
            lead(plan.preconditionUnmet(), a.precondition(), Outcome.UNDECIDED);
        }
    }

    private void switched(Fact.Switched w) {
        if (w.live()) {
            live.add(w.item());
        } else {
            live.remove(w.item());
        }
        if (inStep) {
            next();
        } else if (live.isEmpty()) {
            offBeforePowerUp = false;
            if (offBeforeTheEnd) {
                finish();
            }
        }
    }

    private void abandoned() {
        say("departure ABANDONED");
        soak.abandoned();
        powerAsked = false;
        release = Optional.empty();
        conclude(Verdict.UNDECIDED, Outcome.UNDECIDED);
    }

    // ---- checks

    private void check(String check, boolean good, Move otherwise) {
        say("decided " + check + " " + (good ? Outcome.CONFORMS : Outcome.DOES_NOT_CONFORM));
        if (good) {
            next();
        } else {
            lead(otherwise, check, Outcome.DOES_NOT_CONFORM);
        }
    }

    private void item(Fact.ItemConfirmed c, Action.Choose choose) {
        if (!c.yes()) {
            say("decided " + c.check() + " DOES_NOT_CONFORM");
            lead(choose.failed(), c.check(), Outcome.DOES_NOT_CONFORM);
        } else if (itemsLeft(choose) == 0) {
            allItems(c.check());
        }
    }

    int itemsLeft(Action.Choose choose) {
        return choose.only().size() + choose.spare().size() - all(Fact.ItemConfirmed.class).size();
    }

    private void allItems(String check) {
        if (all(Fact.ItemConfirmed.class).stream().allMatch(Fact.ItemConfirmed::yes)) {
            say("decided " + check + " CONFORMS");
        }
        next();
    }

    <T extends Fact> List<T> all(Class<T> kind) {
        return told.stream().map(Told::fact).filter(kind::isInstance).map(kind::cast).toList();
    }

    private void measured(Action.Measure m) {
        List<BigDecimal> values = all(Fact.Measured.class).stream().map(f -> f.value().value()).toList();
        Outcome outcome = ObviousDecisions.ofAll(values, m, new BigDecimal("0.05"));
        say("decided " + m.id() + " " + outcome);
        int left = m.again().map(Action.Again::atMost).orElse(0) - (values.size() - 1);
        if (outcome == Outcome.UNDECIDED && left > 0) {
            say("repeated " + stepName() + "." + m.id() + " " + values.size());
        } else {
            decided(outcome, m.id(), m.rejected(), m.undecided());
        }
    }

    private void cellRead(Action.Grid g) {
        List<Fact.CellRead> cells = all(Fact.CellRead.class);
        List<Action.AxisValue> currents = g.axes().get(1).values();
        if (cells.size() < g.axes().get(0).values().size() * currents.size()) {
            return;
        }
        BigDecimal worstMargin = null;
        BigDecimal worstValue = null;
        for (Fact.CellRead cell : cells) {
            BigDecimal applied = currents.get(cell.cell() % currents.size()).quantity().orElseThrow().value();
            BigDecimal judged = cell.value().value().subtract(applied);
            BigDecimal margin = ObviousDecisions.margin(judged, g.limits());
            if (worstMargin == null || margin.compareTo(worstMargin) < 0) {
                worstMargin = margin;
                worstValue = judged;
            }
        }
        Outcome outcome = ObviousDecisions.of(worstValue, g.limits(), new BigDecimal("0.004"), g.rule());
        say("decided " + g.id() + " " + outcome);
        decided(outcome, g.id(), g.rejected(), g.undecided());
    }

    private void decided(Outcome outcome, String check, Move rejected, Move undecided) {
        switch (outcome) {
            case DOES_NOT_CONFORM -> lead(rejected, check, outcome);
            case UNDECIDED -> lead(undecided, check, outcome);
            default -> next();
        }
    }

    // ---- expectations

    /** When a tone is due; counted from its mark. */
    Duration due(Action.Expect e, boolean opens) {
        return mark(e).age().plus(opens ? e.window().opens() : e.window().closes());
    }

    private ModelLog.Line mark(Action.Expect e) {
        return log.last("mark", e.window().mark()).orElseThrow();
    }

    boolean toneGiven(Action.Expect e, boolean opens) {
        Fact.ToneGiven.Tone tone = opens ? Fact.ToneGiven.Tone.OPENS : Fact.ToneGiven.Tone.CLOSES;
        return all(Fact.ToneGiven.class).stream().anyMatch(t -> t.check().equals(e.id()) && t.tone() == tone);
    }

    /** What was seen, as far as it is known: a late tone makes it unseen. */
    Optional<Sight> sight(Action.Expect e) {
        boolean late = told.stream().anyMatch(t -> t.fact() instanceof Fact.ToneGiven tone && tone.check().equals(e.id())
                && (t.sitting() != mark(e).sitting()
                        || t.age().minus(due(e, tone.tone() == Fact.ToneGiven.Tone.OPENS)).compareTo(LATEST_TONE) > 0));
        return late ? Optional.of(Sight.NOT_LOOKING)
                : all(Fact.Seen.class).stream().filter(s -> s.check().equals(e.id())).map(Fact.Seen::answer).findFirst();
    }

    List<Action.Expect> expected() {
        return group().stream().map(Action.Expect.class::cast).toList();
    }

    private void expectations() {
        if (expected().stream().anyMatch(e -> sight(e).isEmpty())) {
            return;
        }
        for (Action.Expect e : expected()) {
            say("decided " + e.id() + " " + switch (sight(e).orElseThrow()) {
                case YES -> Outcome.CONFORMS;
                case NO -> Outcome.DOES_NOT_CONFORM;
                case NOT_LOOKING -> Outcome.UNDECIDED;
            });
        }
        afterExpectations();
    }

    private void afterExpectations() {
        List<String> forgiven = all(Fact.Released.class).stream().filter(Fact.Released::given).map(Fact.Released::check).toList();
        for (Action.Expect e : expected()) {
            if (sight(e).orElseThrow() == Sight.NO && !forgiven.contains(e.id())) {
                lead(e.failed(), e.id(), Outcome.DOES_NOT_CONFORM);
                return;
            }
        }
        if (expected().stream().anyMatch(e -> sight(e).orElseThrow() == Sight.NOT_LOOKING)) {
            repeat();
        } else {
            next();
        }
    }

    private void repeat() {
        int before = log.count("void", stepName());
        if (before >= VOIDS) {
            lead(Parts.undecided("void"), "", Outcome.UNDECIDED);
            return;
        }
        note("void", stepName());
        say("departure REPEATED");
        say("repeated " + stepName() + ". " + (before + 1));
        arrive(stage, step);
    }

    // ---- releases

    private void released(Fact.Released r) {
        if (release.isEmpty()) {
            check(r.check(), r.given(), ((Action.Release) current()).failed());
        } else if (r.given()) {
            release = Optional.empty();
            say("decided " + r.check() + " RELEASED");
            say("departure RELEASED");
            if (worst == Outcome.CONFORMS) {
                worst = Outcome.RELEASED;
            }
            afterRelease(r.check());
        } else if (!makingSafe()) {
            release = Optional.empty();
            conclude(Verdict.UNDECIDED, Outcome.UNDECIDED);
        }
    }

    private void afterRelease(String check) {
        if (current() instanceof Action.Expect && expected().stream().anyMatch(e -> e.id().equals(check))) {
            afterExpectations();
        } else if (current() instanceof Action.Choose choose) {
            if (itemsLeft(choose) == 0) {
                allItems(check);
            }
        } else {
            next();
        }
    }

    // ---- moves

    void lead(Move move, String check, Outcome outcome) {
        if (move instanceof Move.Conclude c && !makingSafe()) {
            conclude(c.verdict(), outcome);
        } else if (move instanceof Move.Conclude) {
            release = Optional.of(new WaitingFor(check, Role.SUPERVISOR));
        } else if (move instanceof Move.ReleaseBy r) {
            release = Optional.of(new WaitingFor(check, r.by()));
        } else if (move instanceof Move.GoTo g) {
            String key = here().name() + "." + stepName() + "." + check + " to " + g.stage() + "." + g.step();
            if (g.bound().isPresent() && log.count("taken", key) >= g.bound().get().atMost()) {
                lead(g.bound().get().instead(), check, outcome);
            } else {
                go(stageOf(g), stepOf(g), key, outcome);
            }
        } else if (move instanceof Move.BeginAgain b) {
            String key = here().name() + " again";
            if (log.count("taken", key) >= b.bound().atMost()) {
                lead(b.bound().instead(), check, outcome);
            } else {
                go(stage, step, key, outcome);
            }
        }
    }

    private int stageOf(Move.GoTo g) {
        return makingSafe() ? stage : plan.stages().stream().map(Stage::name).toList().indexOf(g.stage());
    }

    private int stepOf(Move.GoTo g) {
        Stage target = makingSafe() ? plan.makeSafe() : plan.stages().get(stageOf(g));
        return target instanceof WorkStage w ? w.steps().stream().map(s -> s.name()).toList().indexOf(g.step()) : 0;
    }

    void go(int toStage, int toStep, String taken, Outcome outcome) {
        close(outcome);
        if (toStage != stage) {
            late();
        }
        note("taken", taken);
        arrive(toStage, toStep);
        say("moved to " + here().name() + "." + stepName());
    }

    private void conclude(Verdict verdict, Outcome outcome) {
        close(outcome);
        late();
        // A plan's own end and the make-safe key never reject.
        if (verdict == Verdict.REJECTED) {
            say("nonconformity " + here().name() + "." + stepName());
        }
        reach(verdict);
    }

    private void reach(Verdict verdict) {
        say("concluding " + verdict);
        concluding = Optional.of(verdict);
        openPreconditions.clear();
        offBeforePowerUp = false;
        arrive(plan.stages().size(), 0);
    }

    private void close(Outcome outcome) {
        if (inStep) {
            boolean counts = worst == Outcome.CONFORMS || outcome == Outcome.DOES_NOT_CONFORM || outcome == Outcome.UNDECIDED;
            say("closed " + stepName() + " " + (counts ? outcome : worst));
            inStep = false;
        }
    }

    /** Notes a stage that took too long; its time counts from its first step opened since the test came into it. */
    private void late() {
        if (here() instanceof WorkStage w && w.atMost().isPresent()) {
            Optional<ModelLog.Line> first = log.lastSince("in stage", w.name(), Set.of("stage"));
            if (first.isPresent() && now.minus(first.get().age()).compareTo(w.atMost().get()) > 0) {
                say("departure LATE_STAGE");
            }
        }
    }

    void arrive(int toStage, int toStep) {
        if (toStage != stage) {
            note("stage", "");
        }
        stage = toStage;
        step = toStep;
        action = 0;
        inStep = false;
        worst = Outcome.CONFORMS;
        told.clear();
        release = Optional.empty();
        note("arrived", "");
    }

    private int firstInOrder(int from) {
        int index = from;
        while (index < plan.stages().size() && plan.stages().get(index) instanceof WorkStage w && w.onDemand()) {
            index++;
        }
        return index;
    }

    // ---- on and on

    private void next() {
        action += group().size();
        told.clear();
        settle();
    }

    private void settle() {
        while (action + 1 < actions().size() && current() instanceof Action.Energise e && actions().get(action + 1) instanceof Action.Mark) {
            live.add(e.item());
            action++;
        }
        if (action == actions().size()) {
            close(worst);
            leave();
        } else if (current() instanceof Action.End end) {
            Verdict verdict = end.conclusion().verdict();
            lead(end.conclusion(), end.id(), verdict == Verdict.ACCEPTED ? Outcome.CONFORMS
                    : verdict == Verdict.REJECTED ? Outcome.DOES_NOT_CONFORM : Outcome.UNDECIDED);
        } else if (current() instanceof Action.Go go) {
            lead(go.to(), go.id(), worst);
        } else if (current() instanceof Action.Wait wait) {
            waitBegins(wait);
        }
    }

    private void waitBegins(Action.Wait wait) {
        say("wait " + wait.id());
        note("wait", wait.id());
    }

    void leave() {
        if (here() instanceof WorkStage w && step + 1 < w.steps().size()) {
            arrive(stage, step + 1);
            return;
        }
        late();
        if (makingSafe()) {
            finish();
        } else if (here() instanceof WorkStage w && w.onDemand()) {
            reach(Verdict.UNDECIDED);
        } else if (firstInOrder(stage + 1) < plan.stages().size()) {
            arrive(firstInOrder(stage + 1), 0);
        } else {
            reach(plan.end().verdict());
        }
    }

    private void finish() {
        offBeforeTheEnd = !live.isEmpty();
        if (offBeforeTheEnd) {
            arrive(stage, step);
        } else {
            say("made safe");
            say((rehearsal ? "would be " : "verdict ") + concluding.orElseThrow());
            ended = concluding;
        }
    }

    /** Opens the next step once nothing has to be asked before it. */
    private void advance() {
        boolean waits = ended.isPresent() || powerAsked || release.isPresent() || inStep || soak.underWay() || toSwitchOff().isPresent();
        if (waits) {
            return;
        }
        if (!makingSafe()) {
            expireAged();
        }
        if (openPreconditions.isEmpty() && hazardToRead().isEmpty() && here() instanceof WorkStage) {
            open();
            advance();
        }
    }

    private void open() {
        note("opened", stepName());
        say("opened " + stepName() + " " + log.count("opened", stepName()));
        if (live.isEmpty() && !makingSafe()) {
            note("cold", stage + "/" + step);
        }
        if (log.lastSince("in stage", here().name(), Set.of("stage")).isEmpty()) {
            note("in stage", here().name());
        }
        inStep = true;
        settle();
    }

    // ---- what is asked before a step

    private void expireAged() {
        for (Precondition p : plan.preconditions()) {
            Optional<ModelLog.Line> met = log.last("met", p.name());
            boolean aged = met.isPresent() && p.valid().isPresent() && now.minus(met.get().age()).compareTo(p.valid().get()) > 0;
            if (aged && !openPreconditions.contains(p.name())) {
                say("expired " + p.name());
                openPreconditions.add(p.name());
            }
        }
    }

    Optional<String> hazardToRead() {
        List<String> names = new ArrayList<>(here().hazards());
        if (here() instanceof WorkStage w) {
            names.addAll(w.steps().get(step).hazards());
        }
        return names.stream().filter(this::unread).findFirst();
    }

    private boolean unread(String name) {
        Hazard hazard = plan.hazards().stream().filter(h -> h.name().equals(name)).findFirst().orElseThrow();
        Set<String> since = hazard.signal() == SignalWord.DANGER ? Set.of("arrived", "interrupted") : Set.of("interrupted");
        return log.lastSince("hazard", name, since).isEmpty();
    }

    Optional<String> toSwitchOff() {
        if (inStep || soak.underWay()) {
            return Optional.empty();
        }
        return live.stream().filter(item -> offBeforePowerUp || offBeforeTheEnd || makingSafe() && !isolatedInMakeSafe(item)
                || here() instanceof WorkStage && firstSwitch(item).filter(Action.Energise.class::isInstance).isPresent()).findFirst();
    }

    private Optional<Action> firstSwitch(String item) {
        return actions().stream().filter(a -> a instanceof Action.Energise e && e.item().equals(item)
                || a instanceof Action.Isolate i && i.item().equals(item)).findFirst();
    }

    private boolean isolatedInMakeSafe(String item) {
        return plan.makeSafe().steps().stream().flatMap(s -> s.actions().stream())
                .anyMatch(a -> a instanceof Action.Isolate i && i.item().equals(item));
    }

    // ---- interruptions

    private void interrupted() {
        note("interrupted", "");
        if (inStep) {
            say("departure INTERRUPTED");
        }
        if (live.isEmpty() && !soak.underWay()) {
            goOn();
        } else {
            powerAsked = true;
        }
    }

    private void goOn() {
        if (!inStep) {
            return;
        }
        if (!makingSafe()) {
            expireAged();
        }
        boolean timing = actions().subList(action, actions().size()).stream().anyMatch(a -> a instanceof Action.Expect e
                && log.lastSince("mark", e.window().mark(), Set.of("opened")).isPresent());
        if (release.isPresent()) {
            return;
        }
        if (timing) {
            repeat();
        } else if (current() instanceof Action.Wait wait) {
            waitBegins(wait);
        }
    }

    private void powerLost() {
        release = Optional.empty();
        if (makingSafe()) {
            offBeforeTheEnd = false;
            go(stage, 0, "", Outcome.UNDECIDED);
            return;
        }
        offBeforePowerUp = !live.isEmpty();
        plan.preconditions().stream().map(Precondition::name).filter(p -> !openPreconditions.contains(p)).toList().forEach(p -> {
            say("expired " + p);
            openPreconditions.add(p);
        });
        if (soak.underWay()) {
            soak.powerLost((SoakStage) here());
        } else {
            toCold("");
        }
    }

    /** Back to the step last opened with nothing live. */
    void toCold(String taken) {
        String[] cold = log.last("cold").map(l -> l.about().split("/")).orElse(new String[] { "0", "0" });
        go(Integer.parseInt(cold[0]), Integer.parseInt(cold[1]), taken, Outcome.UNDECIDED);
    }
}
