package org.benchwright.engine.internal;

import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.plan.Move;

/** Carrying out a move: where a check that does not conform leads. */
final class Moves {

    private Moves() {
    }

    /**
     * Queues what follows from taking a move.
     *
     * @param check   the id of the check that leads there
     * @param because why, in plain words
     * @param outcome what the check came to
     */
    static void take(RunState s, Move move, String check, String because, Outcome outcome) {
        if (move instanceof Move.Conclude c) {
            conclude(s, c, check, because, outcome);
        } else if (move instanceof Move.GoTo g) {
            goTo(s, g, check, because, outcome);
        } else if (move instanceof Move.ReleaseBy r) {
            s.release(Optional.of(new PendingRelease(check, r, because)));
        } else if (move instanceof Move.BeginAgain b) {
            bounded(s, b.bound(), againKey(s), s.spot(), check, because, outcome);
        }
    }

    /** What counts the repeats of a soak. */
    static String againKey(RunState s) {
        return s.stage().name() + " again";
    }

    private static void conclude(RunState s, Move.Conclude c, String check, String because, Outcome outcome) {
        if (s.makingSafe()) {
            // A unit is never left as it is: instead of ending, somebody entitled has to take it over.
            take(s, new Move.ReleaseBy(Role.SUPERVISOR, Words.of("release.unsafe")), check, because, outcome);
            return;
        }
        leaveStage(s, outcome);
        String reason = c.reason().isEmpty() ? because : c.reason();
        if (c.verdict() == Verdict.REJECTED) {
            s.following().add(new Derived.NonconformityNoted(s.stage().name(), s.stepName(), because));
        }
        s.following().add(new Derived.ConclusionReached(c.verdict(), reason));
    }

    private static void goTo(RunState s, Move.GoTo g, String check, String because, Outcome outcome) {
        Spot target = s.spot().target(s.plan(), g);
        String counted = s.stage().name() + "." + s.stepName() + "." + check + " to " + g.stage() + "." + g.step();
        if (g.bound().isPresent()) {
            bounded(s, g.bound().get(), counted, target, check, because, outcome);
        } else {
            moveTo(s, target, counted, because, outcome);
        }
    }

    private static void bounded(RunState s, Move.Bound bound, String counted, Spot target, String check, String because,
            Outcome outcome) {
        if (s.memory().timesTaken(counted) >= bound.atMost()) {
            take(s, bound.instead(), check, because, outcome);
        } else {
            moveTo(s, target, counted, because, outcome);
        }
    }

    /** Queues the event of going elsewhere; {@code counted} is counted when it is taken. */
    static void moveTo(RunState s, Spot target, String counted, String because, Outcome outcome) {
        if (target.stage() == s.spot().stage()) {
            closeStep(s, outcome);
        } else {
            leaveStage(s, outcome);
        }
        s.move(Optional.of(new PendingMove(target, counted)));
        s.following().add(new Derived.Moved(target.stageIn(s.plan()).name(), target.stepNameIn(s.plan()), because));
    }

    static void closeStep(RunState s, Outcome outcome) {
        if (s.stepOpen()) {
            s.worsenStep(outcome);
            s.following().add(new Derived.StepDecided(s.stage().name(), s.stepName(), s.stepOutcome()));
        }
    }

    /** The stage is left before its last step is done. */
    static void leaveStage(RunState s, Outcome outcome) {
        closeStep(s, outcome);
        Steps.noteIfLate(s);
    }
}
