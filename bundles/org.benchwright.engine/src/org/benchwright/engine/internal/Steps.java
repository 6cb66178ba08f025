package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.List;

import org.benchwright.core.Durations;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.WorkStage;

/** From one action to the next, from one step to the next, from one stage to the next. */
final class Steps {

    private Steps() {
    }

    /** The current action, and what runs together with it, is done. */
    static void next(RunState s) {
        s.to(Expectations.groupEnd(s));
        settle(s);
    }

    /** Passes over what asks nothing, and queues what follows from it. */
    static void settle(RunState s) {
        List<Action> actions = s.step().actions();
        while (s.actionIndex() < actions.size() && s.action() instanceof Action.Energise e && markFollows(s)) {
            // The mark is pressed as the switch closes and confirms both; until then the careful assumption is "live".
            s.live().add(e.item());
            s.to(s.actionIndex() + 1);
        }
        if (s.actionIndex() == actions.size()) {
            s.following().add(new Derived.StepDecided(s.stage().name(), s.stepName(), s.stepOutcome()));
        } else if (s.action() instanceof Action.End end) {
            Moves.take(s, end.conclusion(), end.id(), end.conclusion().reason(), outcome(end.conclusion().verdict()));
        } else if (s.action() instanceof Action.Go go) {
            Moves.take(s, go.to(), go.id(), Words.of("because.asWritten"), s.stepOutcome());
        } else if (s.action() instanceof Action.Derive derive) {
            DerivedValues.decide(s, derive);
        } else if (s.action() instanceof Action.Branch branch && Branches.isAnswered(s, branch)) {
            Branches.takeAgain(s, branch);
        } else if (s.action() instanceof Action.Wait wait) {
            s.following().add(new Derived.WaitBegan(wait.id()));
        }
    }

    private static Outcome outcome(Verdict verdict) {
        return switch (verdict) {
            case ACCEPTED -> Outcome.CONFORMS;
            case REJECTED -> Outcome.DOES_NOT_CONFORM;
            case UNDECIDED -> Outcome.UNDECIDED;
        };
    }

    private static boolean markFollows(RunState s) {
        List<Action> actions = s.step().actions();
        int after = s.actionIndex() + 1;
        return after < actions.size() && actions.get(after) instanceof Action.Mark;
    }

    /** The rest of the step is passed over; nothing of it is asked and nothing is wrong. */
    static void passOver(RunState s) {
        s.to(s.step().actions().size());
        settle(s);
    }

    /** The step or soak that the test is at has ended as it should. */
    static void leave(RunState s) {
        if (s.stage() instanceof WorkStage w && s.spot().step() + 1 < w.steps().size()) {
            s.arrive(new Spot(s.spot().stage(), s.spot().step() + 1));
        } else {
            leaveStage(s);
        }
    }

    private static void leaveStage(RunState s) {
        noteIfLate(s);
        if (s.makingSafe()) {
            madeSafe(s);
        } else if (s.stage() instanceof WorkStage w && w.onDemand()) {
            s.following().add(new Derived.ConclusionReached(Verdict.UNDECIDED, Words.of("because.noConclusion", w.title())));
        } else {
            int next = nextInOrder(s.plan().stages(), s.spot().stage() + 1);
            if (next < s.plan().stages().size()) {
                s.arrive(new Spot(next, 0));
            } else {
                Move.Conclude end = s.plan().end();
                s.following().add(new Derived.ConclusionReached(end.verdict(),
                        end.reason().isEmpty() ? Words.of("because.allDone") : end.reason()));
            }
        }
    }

    /** The steps of make safe are done; the test ends once nothing is live any more, whichever way they were gone through. */
    static void madeSafe(RunState s) {
        if (s.live().isEmpty()) {
            s.switchOff(SwitchOff.NOTHING);
            s.following().add(new Derived.MadeSafe());
            s.following().add(end(s));
        } else {
            s.arrive(s.spot());
            s.switchOff(SwitchOff.BEFORE_THE_END);
        }
    }

    private static Derived end(RunState s) {
        Move.Conclude c = s.conclusion().orElseThrow(() -> new IllegalStateException("made safe without a conclusion"));
        return s.opening().rehearsal() ? new Derived.RehearsalEnded(c.verdict(), c.reason())
                : new Derived.Concluded(c.verdict(), c.reason());
    }

    /** Notes that the stage took longer than it may; asked whenever a stage is left, by whichever way. */
    static void noteIfLate(RunState s) {
        if (s.stage() instanceof WorkStage w && w.atMost().isPresent() && s.stageSince().isPresent()) {
            Duration took = s.since(s.stageSince().get());
            if (took.compareTo(w.atMost().get()) > 0) {
                s.following().add(new Derived.DepartureNoted(DepartureKind.LATE_STAGE,
                        Words.of("departure.lateStage", w.title(), Durations.words(took), Durations.words(w.atMost().get()))));
            }
        }
    }

    /** The first stage from {@code from} on that is not on demand. */
    static int nextInOrder(List<Stage> stages, int from) {
        int index = from;
        while (index < stages.size() && stages.get(index) instanceof WorkStage w && w.onDemand()) {
            index++;
        }
        return index;
    }
}
