package org.benchwright.engine.internal;

import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Numbers;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Precondition;

/** Deciding checks: each fact that completes one queues its decision and where it leads. */
final class Checks {

    private Checks() {
    }

    static void pass(RunState s, String check, String words) {
        decide(s, check, Outcome.CONFORMS, Optional.empty(), words);
        Steps.next(s);
    }

    static void fail(RunState s, String check, String words, Move move) {
        decide(s, check, Outcome.DOES_NOT_CONFORM, Optional.empty(), words);
        Moves.take(s, move, check, words, Outcome.DOES_NOT_CONFORM);
    }

    static void decide(RunState s, String check, Outcome outcome, Optional<Numbers> numbers, String words) {
        s.following().add(new Derived.CheckDecided(check, outcome, numbers, words));
    }

    // ---- entries

    static void compared(RunState s, Observation.Compared c) {
        Action.Compare action = (Action.Compare) s.action();
        boolean same = plain(c.left()).equals(plain(c.right()));
        if (same) {
            pass(s, c.check(), Words.of("compare.same", action.left(), action.right(), c.left().strip()));
        } else {
            fail(s, c.check(), Words.of("compare.differ", action.left(), c.left().strip(), action.right(), c.right().strip()),
                    action.failed());
        }
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
    }

    static void confirmed(RunState s, Observation.Confirmed c) {
        if (s.action() instanceof Action.Branch branch) {
            Branches.answered(s, branch, c);
            return;
        }
        Action.Confirm action = (Action.Confirm) s.action();
        if (c.yes()) {
            pass(s, c.check(), Words.of("confirm.yes", action.statement()));
        } else {
            fail(s, c.check(), Words.of("confirm.no", action.statement()), action.failed());
        }
    }

    static void itemConfirmed(RunState s, Observation.ItemConfirmed c) {
        Action.Choose action = (Action.Choose) s.action();
        s.progress(s.progress().entered(c));
        if (!c.yes()) {
            fail(s, c.check(), Words.of("choose.no", c.item()), action.failed());
        } else if (allItems(s, action)) {
            chosen(s, action);
        }
    }

    private static boolean allItems(RunState s, Action.Choose action) {
        return s.progress().entries().size() == action.only().size() + action.spare().size();
    }

    /** Every item is answered; one that was not as chosen has its decision already. */
    private static void chosen(RunState s, Action.Choose action) {
        if (s.progress().entries().stream().allMatch(e -> ((Observation.ItemConfirmed) e).yes())) {
            pass(s, action.id(), Words.of("choose.yes"));
        } else {
            Steps.next(s);
        }
    }

    static void released(RunState s, Fact.Released r) {
        Optional<PendingRelease> pending = s.release();
        if (pending.isPresent()) {
            releaseOfFailure(s, r, pending.get());
        } else if (r.given()) {
            pass(s, r.check(), Words.of("release.given", r.by().id()));
        } else {
            fail(s, r.check(), Words.of("release.refused", r.by().id()), ((Action.Release) s.action()).failed());
        }
    }

    private static void releaseOfFailure(RunState s, Fact.Released r, PendingRelease pending) {
        if (r.given()) {
            s.release(Optional.empty());
            String words = Words.of("release.failure", pending.because(), r.by().id(), pending.asked().statement());
            decide(s, r.check(), Outcome.RELEASED, Optional.empty(), words);
            s.following().add(new Derived.DepartureNoted(DepartureKind.RELEASED, words));
            s.worsenStep(Outcome.RELEASED);
            afterRelease(s, r.check());
        } else if (!s.makingSafe()) {
            s.release(Optional.empty());
            String words = Words.of("release.refusedFailure", pending.because(), r.by().id());
            Moves.take(s, new Move.Conclude(Verdict.UNDECIDED, words), r.check(), words, Outcome.UNDECIDED);
        }
        // In make safe a refusal changes nothing: the unit stays in somebody's hands until it is safe.
    }

    /** A release covers what failed and nothing else: the rest of the same action is still asked. */
    private static void afterRelease(RunState s, String check) {
        if (s.action() instanceof Action.Expect && s.progress().seen().containsKey(check)) {
            Expectations.released(s, check);
        } else if (s.action() instanceof Action.Choose choose && s.progress().entries().size() > 0) {
            if (allItems(s, choose)) {
                chosen(s, choose);
            }
        } else {
            Steps.next(s);
        }
    }

    static void answered(RunState s, Observation.PreconditionAnswered a) {
        Precondition precondition = s.plan().preconditions().stream().filter(p -> p.name().equals(a.precondition())).findFirst().orElseThrow();
        boolean inside = precondition.reading().isEmpty()
                || a.reading().map(r -> precondition.reading().get().contains(r)).orElse(false);
        if (a.met() && inside) {
            s.openPreconditions().remove(a.precondition());
            s.memory().preconditionsMet().put(a.precondition(), s.now());
        } else {
            Moves.take(s, s.plan().preconditionUnmet(), a.precondition(), Words.of("precondition.unmet", precondition.statement()),
                    Outcome.UNDECIDED);
        }
    }
}
