package org.benchwright.engine.internal;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Durations;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Precondition;
import org.benchwright.engine.plan.WorkStage;

/**
 * Going on after an interruption. What was timed is void; and unless the unit is known to have kept its power, the test never goes on
 * where a live unit is assumed: everything is switched off, then preconditions and power-up come again.
 */
final class Interruptions {

    private Interruptions() {
    }

    static void interrupted(RunState s, Fact.Interrupted fact) {
        s.memory().acknowledged().clear();
        s.acknowledgedHere().clear();
        if (s.stepOpen()) {
            s.following().add(new Derived.DepartureNoted(DepartureKind.INTERRUPTED,
                    Words.of("departure.interrupted", Durations.words(fact.gap()), s.stepName())));
        }
        if (s.live().isEmpty() && !s.soak().begun()) {
            goOn(s);
        } else {
            s.askPower(true);
        }
    }

    static void power(RunState s, boolean kept) {
        s.askPower(false);
        if (kept) {
            goOn(s);
        } else {
            powerLost(s);
        }
    }

    private static void goOn(RunState s) {
        if (s.stepOpen() && !s.makingSafe()) {
            // Within a soak nobody works on the unit: there they are asked again after it.
            Transitions.agedPreconditions(s).forEach(p -> s.following().add(new Derived.PreconditionExpired(p.name())));
        }
        voidTiming(s);
    }

    /** Deadlines and waits that were running are void: nobody knows what happened in between. */
    private static void voidTiming(RunState s) {
        if (!s.stepOpen() || s.release().isPresent()) {
            return;
        }
        List<Action> actions = s.step().actions();
        List<Action> ahead = actions.subList(s.actionIndex(), actions.size());
        boolean timing = ahead.stream().anyMatch(a -> a instanceof Action.Expect e && s.memory().marks().containsKey(e.window().mark()));
        if (timing) {
            Expectations.repeatStep(s, Words.of("because.interrupted"));
        } else if (s.action() instanceof Action.Wait wait) {
            s.following().add(new Derived.WaitBegan(wait.id()));
        }
    }

    private static void powerLost(RunState s) {
        s.release(Optional.empty());
        if (s.makingSafe()) {
            s.switchOff(SwitchOff.NOTHING);
            Moves.moveTo(s, new Spot(s.spot().stage(), 0), "", Words.of("because.powerLost"), Outcome.UNDECIDED);
            return;
        }
        s.switchOff(s.live().isEmpty() ? SwitchOff.NOTHING : SwitchOff.BEFORE_POWER_UP);
        s.plan().preconditions().stream().map(Precondition::name).filter(s.memory().preconditionsMet()::containsKey)
                .forEach(met -> s.following().add(new Derived.PreconditionExpired(met)));
        SoakRules.underWay(s).ifPresentOrElse(soak -> SoakRules.powerLost(s, soak), () -> powerLostAtWork(s));
    }

    /**
     * A stage on demand looks at what a check has found. With the power that is gone, and going on from power-up would lead past it, as if nothing
     * had been found.
     */
    private static void powerLostAtWork(RunState s) {
        if (s.stage() instanceof WorkStage w && w.onDemand()) {
            String words = Words.of("because.powerLostOnDemand", w.title());
            Moves.take(s, new Move.Conclude(Verdict.UNDECIDED, words), "", words, Outcome.UNDECIDED);
        } else {
            Moves.moveTo(s, s.coldSpot(), "", Words.of("because.powerLost"), Outcome.UNDECIDED);
        }
    }
}
