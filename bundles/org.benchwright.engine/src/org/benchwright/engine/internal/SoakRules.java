package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.core.Quantity;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.SoakStage;

/**
 * A soak observed by looks. Hours between two good looks are evidence only where a stop of this family latches: otherwise the unit
 * could have stopped and started again unseen.
 */
final class SoakRules {

    private static final double CONFIDENCE = 0.9;

    private SoakRules() {
    }

    static void looked(RunState s, Fact.Looked look) {
        SoakStage soak = s.atSoak().orElseThrow();
        boolean outside = noteOutside(s, soak, look);
        if (!s.soak().begun()) {
            begin(s, soak, look.answer());
        } else if (look.answer() == Fact.Sight.YES) {
            goodLook(s, soak);
        } else {
            stopped(s, soak, outside);
        }
    }

    private static boolean noteOutside(RunState s, SoakStage soak, Fact.Looked look) {
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

    private static void begin(RunState s, SoakStage soak, Fact.Sight answer) {
        if (answer == Fact.Sight.YES) {
            int attempt = s.timesTaken(Moves.againKey(s)) + 1;
            Duration due = Soak.begin(attempt, s.lastMoment()).due(soak);
            s.following().add(new Derived.SoakBegun(soak.name(), attempt, due));
        } else {
            String words = Words.of("soak.notBegun", soak.keep().source());
            s.following().add(new Derived.SoakEnded(soak.name(), Outcome.DOES_NOT_CONFORM, Duration.ZERO, words));
            Moves.take(s, soak.stopped(), "look", words, Outcome.DOES_NOT_CONFORM);
        }
    }

    private static void goodLook(RunState s, SoakStage soak) {
        Duration since = sinceLastGood(s);
        Duration due = s.soak().due(soak);
        if (since.compareTo(due.plus(soak.lookTolerance())) > 0) {
            s.following().add(new Derived.DepartureNoted(DepartureKind.LATE_LOOK,
                    Words.of("soak.lateLook", Durations.words(since.minus(due)), Durations.words(soak.lookTolerance()))));
        }
        Duration witnessed = s.soak().witnessed().plus(s.plan().family().stopStays() ? since : Duration.ZERO);
        if (witnessed.compareTo(soak.lasting()) >= 0) {
            s.following().add(new Derived.SoakEnded(soak.name(), Outcome.CONFORMS, witnessed, proved(witnessed)));
        } else {
            Duration next = s.soak().goodLook(s.lastMoment(), witnessed).due(soak);
            s.following().add(new Derived.SoakWitnessed(soak.name(), witnessed, next));
        }
    }

    private static void stopped(RunState s, SoakStage soak, boolean outside) {
        Duration witnessed = s.soak().witnessed();
        String words = Words.of("soak.stopped", soak.keep().source(), Durations.words(witnessed),
                Durations.words(witnessed.plus(sinceLastGood(s))));
        s.following().add(new Derived.SoakEnded(soak.name(), Outcome.DOES_NOT_CONFORM, witnessed, words));
        Moves.take(s, outside ? soak.stoppedOutside() : soak.stopped(), "look", words, Outcome.DOES_NOT_CONFORM);
    }

    private static Duration sinceLastGood(RunState s) {
        Moment lastGood = s.soak().lastGood().orElseThrow();
        return s.lastMoment().since(lastGood);
    }

    /** What hours without a stop prove, in words and a number, instead of "probably fine". */
    private static String proved(Duration witnessed) {
        double hours = witnessed.toMillis() / 3_600_000.0;
        double interval = hours / -Math.log1p(-CONFIDENCE);
        return Words.of("soak.proved", Durations.words(witnessed), "90 %", String.format(Locale.ROOT, "%.0f h", Math.floor(interval)));
    }

    /** Power was lost while the soak was under way: the unit has to be powered up again, and the soak begins again or the test ends. */
    static void powerLost(RunState s, SoakStage soak) {
        Duration witnessed = s.soak().witnessed();
        String words = Words.of("soak.powerLost", Durations.words(witnessed));
        s.following().add(new Derived.SoakEnded(soak.name(), Outcome.UNDECIDED, witnessed, words));
        Move instead = soak.gap().map(SoakStage.Gap::instead).orElse(new Move.Conclude(Verdict.UNDECIDED, words));
        if (!(instead instanceof Move.BeginAgain again)) {
            Moves.take(s, instead, "power", words, Outcome.UNDECIDED);
        } else if (s.timesTaken(Moves.againKey(s)) >= again.bound().atMost()) {
            Moves.take(s, again.bound().instead(), "power", words, Outcome.UNDECIDED);
        } else {
            Moves.moveTo(s, s.coldSpot(), Moves.againKey(s), words, Outcome.UNDECIDED);
        }
    }

    static void apply(RunState s, Derived derived) {
        if (derived instanceof Derived.SoakBegun b) {
            s.soak(Soak.begin(b.attempt(), s.lastMoment()));
        } else if (derived instanceof Derived.SoakWitnessed w) {
            s.soak(s.soak().goodLook(s.lastMoment(), w.witnessed()));
        } else {
            s.soak(s.soak().ended());
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
