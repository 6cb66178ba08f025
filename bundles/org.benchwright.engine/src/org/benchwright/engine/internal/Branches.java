package org.benchwright.engine.internal;

import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;

/** Going on one way or the other, as the unit is fitted or as was seen; neither is a fault. */
final class Branches {

    private Branches() {
    }

    /** Whether the answer is known from earlier in this test. */
    static boolean isAnswered(RunState s, Action.Branch branch) {
        return branch.remembered().map(s.memory().answers()::containsKey).orElse(false);
    }

    /** The question as it is asked: a statement to answer. Where a no leads is the branch's affair, so the statement's own is never taken. */
    static Action.Confirm question(Action.Branch branch) {
        return new Action.Confirm(branch.id(), branch.statement(), new Move.Conclude(Verdict.UNDECIDED, ""));
    }

    static void answered(RunState s, Action.Branch branch, Observation.Confirmed answer) {
        branch.remembered().ifPresent(key -> s.memory().answers().put(key, answer.yes()));
        take(s, branch, answer.yes());
    }

    static void takeAgain(RunState s, Action.Branch branch) {
        take(s, branch, s.memory().answers().get(branch.remembered().orElseThrow()));
    }

    private static void take(RunState s, Action.Branch branch, boolean yes) {
        String words = Words.of(yes ? "branch.yes" : "branch.no", branch.statement());
        Checks.decide(s, branch.id(), Outcome.CONFORMS, Optional.empty(), words);
        if (yes != branch.when()) {
            Steps.next(s);
        } else if (branch.to().isPresent()) {
            Moves.take(s, branch.to().get(), branch.id(), words, Outcome.CONFORMS);
        } else {
            Steps.passOver(s);
        }
    }
}
