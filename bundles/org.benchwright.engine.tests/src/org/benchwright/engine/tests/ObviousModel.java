package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.benchwright.core.SignalWord;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Hazard;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.WorkStage;

/**
 * A test in slow and obvious code that shares nothing with the engine: for each question it goes through all facts again, looks things up
 * in a list of what happened, and treats a struck entry as one that was never made. Derived events are not read; they are retold, without
 * their words, as {@link #story}.
 */
final class ObviousModel extends ObviousChecks {


    final ObviousSoak soak = new ObviousSoak(this);

    private ObviousModel(Plan plan) {
        super(plan);
    }

    static ObviousModel of(Plan plan, List<TestEvent> events) {
        ObviousModel model = new ObviousModel(plan);
        Duration age = Duration.ZERO;
        Duration ageOfSitting = Duration.ZERO;
        Moment before = events.get(0).moment();
        boolean byWatch = false;
        for (TestEvent event : events) {
            byWatch = event.body() instanceof WatchFact || byWatch && !(event.body() instanceof Fact);
            Duration since = byWatch ? Duration.between(before.instant(), event.moment().instant()) : passed(before, event.moment());
            Duration reached = ageOfSitting.plus(since);
            // In a sitting its own clock tells how old the test is, whatever a watch said before.
            boolean ownClock = !byWatch && before.sitting() == event.moment().sitting();
            age = ownClock || reached.compareTo(age) > 0 ? reached : age;
            if (!byWatch) {
                // A watch does not move the sitting's clock.
                ageOfSitting = age;
                before = event.moment();
            }
            if (event.body() instanceof Fact.Struck struck) {
                ObviousModel unstruck = of(plan, events.subList(0, (int) struck.sequence() - 1));
                unstruck.live.addAll(model.live);
                unstruck.story = model.story;
                model = unstruck;
            }
            if (event.body() instanceof Fact fact) {
                model.now = age;
                model.sitting = event.moment().sitting();
                if (fact instanceof WatchFact watched) {
                    model.soak.told(watched, event.moment().instant());
                } else {
                    model.soak.nothingSeenLaterThan(age);
                    model.take(fact);
                }
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

    // ---- facts

    private void take(Fact fact) {
        if (fact instanceof Fact.Opened o) {
            rehearsal = o.rehearsal();
            plan.preconditions().forEach(p -> openPreconditions.add(p.name()));
            note("stage", "");
            arrive(firstInOrder(0), 0);
        } else if (fact instanceof Observation.PreconditionAnswered a) {
            answered(a);
        } else if (fact instanceof Fact.HazardAcknowledged h) {
            note("hazard", h.hazard());
        } else if (fact instanceof Observation.InstrumentNamed i) {
            note("instrument", i.instrument());
        } else if (fact instanceof Fact.BenchProved proved) {
            proof = Optional.of(proved);
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
        } else if (fact instanceof Observation.Looked l) {
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
        } else if (fact instanceof Fact.ToneGiven || fact instanceof Observation.Seen) {
            expectations();
        } else if (fact instanceof Observation.Measured) {
            measured((Action.Measure) current());
        } else if (fact instanceof Observation.CellRead) {
            cellRead((Action.Grid) current());
        } else if (fact instanceof Observation.Confirmed c && current() instanceof Action.Branch b) {
            b.remembered().ifPresent(key -> answers.put(key, c.yes()));
            branch(b, c.yes());
        } else if (fact instanceof Observation.Confirmed c) {
            check(c.check(), c.yes(), ((Action.Confirm) current()).failed());
        } else if (fact instanceof Observation.Compared c) {
            boolean same = c.left().replaceAll("\\s", "").equalsIgnoreCase(c.right().replaceAll("\\s", ""));
            check(c.check(), same, ((Action.Compare) current()).failed());
        } else if (fact instanceof Observation.ItemConfirmed c) {
            item(c, (Action.Choose) current());
        } else if (fact instanceof Fact.Released r) {
            released(r);
        } else if (!(fact instanceof Observation.ReasonGiven)) {
            next();
        }
    }

    private void answered(Observation.PreconditionAnswered a) {
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

    // ---- on and on

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
        liveAtOpening = Set.copyOf(live);
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
        } else if (here() instanceof WorkStage w && w.onDemand()) {
            conclude(Verdict.UNDECIDED, Outcome.UNDECIDED);
        } else {
            toCold("");
        }
    }
}
