package org.benchwright.engine.internal;

import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Durations;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.internal.RunState.Snapshot;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Precondition;

/** How one event changes the state, and what must follow it. */
public final class Transitions {

    private Transitions() {
    }

    /**
     * The derived event that must come next; empty if the next event is a fact.
     *
     * <p>A pure question: a state answers it the same way however often it is asked.
     */
    public static Optional<Derived> expected(RunState s) {
        if (!s.following().isEmpty()) {
            return Optional.of(s.following().peek());
        }
        boolean facts = !s.opened() || s.outcome().isPresent() || s.powerAsked() || s.release().isPresent() || s.stepOpen() || s.soak().begun();
        if (facts || Demands.itemToSwitchOff(s).isPresent()) {
            return Optional.empty();
        }
        return arriving(s);
    }

    /** What follows before a step or soak is begun. */
    private static Optional<Derived> arriving(RunState s) {
        if (!s.makingSafe()) {
            Optional<Derived> aged = agedPreconditions(s).findFirst().map(p -> new Derived.PreconditionExpired(p.name()));
            if (aged.isPresent() || !s.openPreconditions().isEmpty()) {
                return aged;
            }
        }
        if (Demands.hazardToShow(s).isPresent() || s.atSoak().isPresent()) {
            return Optional.empty();
        }
        String step = s.stepName();
        return Optional.of(new Derived.StepOpened(s.stage().name(), step, s.memory().visits(step) + 1));
    }

    /** What was confirmed longer ago than it is valid. */
    static Stream<Precondition> agedPreconditions(RunState s) {
        return s.plan().preconditions().stream().filter(p -> p.valid().isPresent() && s.memory().preconditionsMet().containsKey(p.name())
                && s.since(s.memory().preconditionsMet().get(p.name())).compareTo(p.valid().get()) > 0);
    }

    /** Changes the state by one event, which must follow from it. */
    public static void apply(RunState s, TestEvent event) {
        if (event.body() instanceof Fact.Struck struck) {
            s.passed(event);
            s.revertTo(s.strikeSnapshot(struck.sequence()));
        } else if (event.body() instanceof Fact fact) {
            Optional<Snapshot> snapshot = snapshot(s, event.sequence(), fact);
            s.passed(event);
            s.keepForStrike(snapshot);
            s.told(fact, event.actor());
            fact(s, fact, event);
        } else {
            s.following().poll();
            s.passed(event);
            derived(s, (Derived) event.body());
        }
    }

    /** An observation can be struck until the next fact that is one, or that something was done by. */
    private static Optional<Snapshot> snapshot(RunState s, long sequence, Fact fact) {
        boolean beside = fact instanceof Fact.Noted || fact instanceof Fact.ClockChanged || fact instanceof Fact.HazardAcknowledged
                || fact instanceof Fact.HazardKnown || fact instanceof Fact.Questioned || fact instanceof Fact.Identified
                || fact instanceof Fact.Placed || fact instanceof Fact.BenchProved;
        if (beside) {
            return s.beforeLast();
        }
        if (!(fact instanceof Observation)) {
            return Optional.empty();
        }
        RunState before = s.copy();
        before.keepForStrike(Optional.empty());
        return Optional.of(new Snapshot(sequence, before));
    }

    // ---- facts

    private static void fact(RunState s, Fact fact, TestEvent event) {
        if (fact instanceof Fact.Opened o) {
            opened(s, o);
            s.hold(event.actor());
        } else if (fact instanceof Observation.PreconditionAnswered a) {
            Checks.answered(s, a);
        } else if (fact instanceof Fact.HazardAcknowledged h) {
            acknowledged(s, h.hazard());
        } else if (fact instanceof Fact.HazardKnown h) {
            acknowledged(s, h.hazard());
        } else if (fact instanceof Observation.InstrumentNamed i) {
            instrument(s, i, event);
        } else if (fact instanceof Fact.Abandoned a) {
            abandon(s, a);
        } else if (fact instanceof Fact.Interrupted i) {
            Interruptions.interrupted(s, i);
        } else if (fact instanceof Fact.PowerAnswered p) {
            Interruptions.power(s, p.kept());
        } else if (fact instanceof Fact.ClockChanged c) {
            s.following().add(new Derived.DepartureNoted(DepartureKind.CLOCK_CHANGED,
                    Words.of("departure.clock", Durations.words(c.by().abs()), Words.of(c.by().isNegative() ? "clock.back" : "clock.forward"))));
        } else if (fact instanceof Observation.Looked l) {
            SoakRules.looked(s, l);
        } else if (fact instanceof WatchFact w) {
            WatchRules.told(s, w);
        } else if (fact instanceof Fact.TakenOver) {
            s.hold(event.actor());
        } else if (fact instanceof Fact.Placed p) {
            s.place(p.position());
        } else if (fact instanceof Fact.BenchProved proof) {
            s.memory().benchProved(proof);
        } else if (fact instanceof Fact.Questioned q) {
            s.question(q);
        } else if (!(fact instanceof Fact.Noted) && !(fact instanceof Fact.Identified)) {
            inStep(s, fact);
        }
    }

    private static void acknowledged(RunState s, String hazard) {
        s.memory().acknowledged().put(hazard, s.now());
        s.acknowledgedHere().add(hazard);
    }

    private static void inStep(RunState s, Fact fact) {
        if (fact instanceof Fact.Switched w) {
            switched(s, w);
        } else if (fact instanceof Fact.Marked m) {
            s.memory().marks().put(m.mark(), s.now());
            Steps.next(s);
        } else if (fact instanceof Fact.ToneGiven t) {
            Expectations.tone(s, t);
        } else if (fact instanceof Observation.Seen a) {
            Expectations.seen(s, a);
        } else if (fact instanceof Observation.Tapped t) {
            Expectations.seen(s, Flashes.answer(Flashes.tappedAlong(s, t.check()).orElseThrow(), t));
        } else if (fact instanceof Observation.Measured m) {
            Readings.measured(s, m);
        } else if (fact instanceof Observation.CellRead c) {
            Readings.cellRead(s, c);
        } else if (fact instanceof Observation.ReasonGiven) {
            s.progress(s.progress().owing(false));
        } else if (fact instanceof Observation.Confirmed c) {
            Checks.confirmed(s, c);
        } else if (fact instanceof Observation.Compared c) {
            Checks.compared(s, c);
        } else if (fact instanceof Observation.ItemConfirmed c) {
            Checks.itemConfirmed(s, c);
        } else if (fact instanceof Fact.Released r) {
            Checks.released(s, r);
        } else {
            Steps.next(s); // text, fault log, attachment, stimulus, waiting time: entered or done, and nothing to decide
        }
    }

    private static void opened(RunState s, Fact.Opened o) {
        s.open(o);
        s.openPreconditions().addAll(s.plan().preconditions().stream().map(Precondition::name).toList());
        s.arrive(new Spot(Steps.nextInOrder(s.plan().stages(), 0), 0));
        SerialNotRead.departure(s.plan(), o).ifPresent(words -> s.following().add(new Derived.DepartureNoted(DepartureKind.SERIAL_NOT_READ, words)));
    }

    private static void instrument(RunState s, Observation.InstrumentNamed i, TestEvent event) {
        s.memory().instruments().put(i.instrument(), i);
        Instruments.pastDue(i, event.moment().instant()).ifPresent(due -> s.following().add(new Derived.DepartureNoted(DepartureKind.INSTRUMENT_PAST_DUE,
                        Words.of("departure.pastDue", i.instrument(), i.asset(), due))));
    }

    private static void switched(RunState s, Fact.Switched w) {
        if (w.live()) {
            s.live().add(w.item());
        } else {
            s.live().remove(w.item());
        }
        if (s.stepOpen()) {
            Steps.next(s);
        } else if (s.live().isEmpty()) {
            boolean atTheEnd = s.switchOff() == SwitchOff.BEFORE_THE_END;
            s.switchOff(SwitchOff.NOTHING);
            if (atTheEnd) {
                Steps.madeSafe(s);
            }
        }
    }

    private static void abandon(RunState s, Fact.Abandoned a) {
        s.askPower(false);
        s.release(Optional.empty());
        String words = Words.of("because.abandoned", a.reason());
        s.following().add(new Derived.DepartureNoted(DepartureKind.ABANDONED, words));
        SoakRules.underWay(s).ifPresent(soak -> SoakRules.endUnlooked(s, soak, words));
        Moves.leaveStage(s, Outcome.UNDECIDED);
        s.following().add(new Derived.ConclusionReached(Verdict.UNDECIDED, words));
    }

    // ---- what follows from them

    private static void derived(RunState s, Derived derived) {
        if (derived instanceof Derived.PreconditionExpired p) {
            s.memory().preconditionsMet().remove(p.precondition());
            s.openPreconditions().add(p.precondition());
        } else if (derived instanceof Derived.StepOpened o) {
            s.openStep(o.step());
            Steps.settle(s);
        } else if (derived instanceof Derived.WaitBegan) {
            s.progress(s.progress().waitingSince(s.now()));
        } else if (derived instanceof Derived.StepDecided) {
            stepDecided(s);
        } else if (derived instanceof Derived.Repeated r) {
            repeated(s, r);
        } else if (derived instanceof Derived.Moved) {
            moved(s);
        } else if (derived instanceof Derived.SoakEnded e) {
            SoakRules.apply(s, derived, s.age().toldByWatch());
            if (SoakRules.passed(e)) {
                Steps.leave(s);
            }
        } else if (derived instanceof Derived.SoakBegun || derived instanceof Derived.SoakWitnessed) {
            SoakRules.apply(s, derived, s.age().toldByWatch());
        } else if (derived instanceof Derived.ConclusionReached c) {
            s.conclude(new Move.Conclude(c.verdict(), c.reason()));
            s.openPreconditions().clear();
            s.switchOff(SwitchOff.NOTHING);
            s.arrive(Spot.beforeMakeSafe(s.plan()));
        } else if (derived instanceof Derived.Concluded c) {
            s.end(c.verdict());
        } else if (derived instanceof Derived.RehearsalEnded c) {
            s.end(c.wouldBe());
        }
        // A decided check, a departure, a nonconformity and "made safe" are on record and change nothing.
    }

    /** A step that was completed leads to the next; one that was left by a move has that move queued behind it. */
    private static void stepDecided(RunState s) {
        if (s.following().isEmpty()) {
            Steps.leave(s);
        }
    }

    private static void repeated(RunState s, Derived.Repeated r) {
        if (r.check().isEmpty()) {
            s.arrive(s.spot());
        } else {
            s.progress(s.progress().owing(true));
        }
    }

    private static void moved(RunState s) {
        PendingMove move = s.move().orElseThrow(() -> new IllegalStateException("no move is pending"));
        s.move(Optional.empty());
        if (!move.counted().isEmpty()) {
            s.memory().count(move.counted());
        }
        s.arrive(move.target());
    }
}
