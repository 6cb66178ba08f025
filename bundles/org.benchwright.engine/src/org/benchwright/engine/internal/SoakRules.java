package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.evidence.Soak;

/**
 * A soak observed by looks; what a watch adds is in {@link WatchRules}. Hours between two good looks are evidence only where a stop of this
 * family latches: otherwise the unit could have stopped and started again unseen, and however long it is looked at, nothing is witnessed by
 * looks.
 */
final class SoakRules {

    private static final double CONFIDENCE = 0.9;

    private SoakRules() {
    }

    static void looked(RunState s, Observation.Looked look) {
        SoakStage soak = s.atSoak().orElseThrow();
        boolean outside = noteOutside(s, soak, look);
        if (s.soak().begun()) {
            noteLate(s, soak);
        }
        if (look.answer() != Observation.Sight.YES) {
            stopped(s, soak, outside);
        } else if (s.soak().begun()) {
            goodLook(s, soak);
        } else {
            Duration due = SoakProgress.begin(s.now()).due(soak);
            s.following().add(new Derived.SoakBegun(soak.name(), s.memory().visits(visitKey(soak.name())) + 1, due));
        }
    }

    private static boolean noteOutside(RunState s, SoakStage soak, Observation.Looked look) {
        boolean outside = false;
        for (int i = 0; i < soak.conditions().size(); i++) {
            Condition condition = soak.conditions().get(i);
            Quantity value = look.readings().get(i).value();
            if (!condition.limits().contains(value)) {
                outside = true;
                s.following().add(new Derived.DepartureNoted(DepartureKind.OUTSIDE_CONDITIONS,
                        Words.of("soak.outside", condition.name(), value, condition.limits())));
            }
        }
        return outside;
    }

    private static void noteLate(RunState s, SoakStage soak) {
        late(s, soak, s.now().age()).ifPresent(late -> s.following().add(new Derived.DepartureNoted(DepartureKind.LATE_LOOK,
                Words.of("soak.lateLook", Durations.words(late), Durations.words(soak.lookTolerance())))));
    }

    /** By how much the next look is late at that age of the test; empty if it is in time. */
    private static Optional<Duration> late(RunState s, SoakStage soak, Duration age) {
        Duration late = age.minus(s.soak().lastGood().orElseThrow().age()).minus(s.soak().due(soak));
        return Optional.of(late).filter(time -> time.compareTo(soak.lookTolerance()) > 0);
    }

    /** A look that nobody has taken by that age of the test, and that nobody will. */
    static Optional<Derived> missed(RunState s, SoakStage soak, Duration age) {
        return late(s, soak, age).map(late -> new Derived.DepartureNoted(DepartureKind.LATE_LOOK,
                Words.of("soak.missedLook", Durations.words(late), Durations.words(soak.lookTolerance()))));
    }

    /** The soak ends, and by no look. */
    static void endUnlooked(RunState s, SoakStage soak, String words) {
        missed(s, soak, s.now().age()).ifPresent(s.following()::add);
        s.following().add(new Derived.SoakEnded(soak.name(), Outcome.UNDECIDED, s.soak().witnessed(), words));
    }

    private static void goodLook(RunState s, SoakStage soak) {
        Duration since = sinceLastGood(s);
        Duration unseen = s.now().age().minus(s.soak().lastSeen());
        boolean latches = s.plan().family().stopStays();
        SoakProgress now = s.soak().goodLook(s.now(), latches ? bridged(s.soak(), since) : s.soak().witnessed());
        boolean gap = !latches && soak.gap().isPresent() && unseen.compareTo(soak.gap().get().atMost()) > 0;
        // A watch that sees goes on until it has seen enough.
        boolean goesOn = s.watch().seeing() && !s.soak().watched().isZero();
        if (now.witnessed().compareTo(soak.lasting()) >= 0) {
            s.following().add(new Derived.SoakEnded(soak.name(), Outcome.CONFORMS, now.witnessed(), proved(now.witnessed())));
        } else if (gap) {
            endUndecided(s, soak, soak.gap().get().instead(), "look", Words.of("soak.gap", Durations.words(unseen),
                    Durations.words(soak.gap().get().atMost())));
        } else if (now.lasted().compareTo(soak.lasting()) >= 0 && !goesOn) {
            String words = Words.of("soak.unwitnessed", Durations.words(now.witnessed()), Durations.words(now.lasted()));
            endUndecided(s, soak, new Move.Conclude(Verdict.UNDECIDED, words), "look", words);
        } else {
            s.following().add(new Derived.SoakWitnessed(soak.name(), now.witnessed(), now.due(soak)));
        }
    }

    /** Where a stop stays all the time since the last look is witnessed, whatever a watch saw of it meanwhile. */
    private static Duration bridged(SoakProgress soak, Duration since) {
        Duration byLooks = soak.atLastLook().plus(since);
        return byLooks.compareTo(soak.witnessed()) > 0 ? byLooks : soak.witnessed();
    }

    static void endUndecided(RunState s, SoakStage soak, Move instead, String by, String words) {
        s.following().add(new Derived.SoakEnded(soak.name(), Outcome.UNDECIDED, s.soak().witnessed(), words));
        Moves.take(s, instead, by, words, Outcome.UNDECIDED);
    }

    private static void stopped(RunState s, SoakStage soak, boolean outside) {
        Duration witnessed = s.soak().witnessed();
        String words = s.soak().begun() ? Words.of("soak.stopped", soak.keep().source(), Durations.words(s.soak().seenFor()),
                Durations.words(s.soak().lasted().plus(sinceLastGood(s)))) : Words.of("soak.notBegun", soak.keep().source());
        s.following().add(new Derived.SoakEnded(soak.name(), Outcome.DOES_NOT_CONFORM, witnessed, words));
        Moves.take(s, outside ? soak.stoppedOutside() : soak.stopped(), "look", words, Outcome.DOES_NOT_CONFORM);
    }

    private static Duration sinceLastGood(RunState s) {
        return s.since(s.soak().lastGood().orElseThrow());
    }

    /** What hours without a stop prove, in words and a number, instead of "probably fine": T / -ln(1 - C), rounded down. */
    static String proved(Duration witnessed) {
        Duration longest = Durations.cutDown(Soak.longestMeanTimeRevealed(witnessed, CONFIDENCE));
        return Words.of("soak.proved", Durations.words(witnessed), "90 %", Durations.words(longest));
    }

    /** Power was lost while the soak was under way. */
    static void powerLost(RunState s, SoakStage soak) {
        String words = Words.of("soak.powerLost", Durations.words(s.soak().lasted()));
        endUnlooked(s, soak, words);
        powerLost(s, soak.onPowerLost(), words);
    }

    private static void powerLost(RunState s, Move move, String words) {
        if (!(move instanceof Move.BeginAgain again)) {
            Moves.take(s, move, "power", words, Outcome.UNDECIDED);
        } else if (s.memory().timesTaken(Moves.againKey(s)) >= again.bound().atMost()) {
            powerLost(s, again.bound().instead(), words);
        } else {
            Moves.moveTo(s, s.coldSpot(), Moves.againKey(s), words, Outcome.UNDECIDED);
        }
    }

    /** Kept apart from the steps' names, which may be the same word. */
    private static String visitKey(String soak) {
        return "soak " + soak;
    }

    /** A watch has changed the soak already when what it witnessed is derived. */
    static void apply(RunState s, Derived derived, boolean byWatch) {
        if (derived instanceof Derived.SoakBegun b) {
            s.memory().visit(visitKey(b.stage()));
            s.soak(SoakProgress.begin(s.now()));
            s.watch(s.watch().unseen());
        } else if (derived instanceof Derived.SoakWitnessed w) {
            if (!byWatch) {
                s.soak(s.soak().goodLook(s.now(), w.witnessed()));
            }
        } else {
            s.soak(SoakProgress.NONE);
            s.watch(s.watch().unseen());
        }
    }

    /** True if the soak ended as it should and the next stage comes. */
    static boolean passed(Derived.SoakEnded ended) {
        return ended.outcome() == Outcome.CONFORMS;
    }

    static Optional<SoakStage> underWay(RunState s) {
        return s.soak().begun() ? s.atSoak() : Optional.empty();
    }
}
