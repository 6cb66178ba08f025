package org.benchwright.engine.tests;

import java.util.Optional;
import java.util.Set;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.WorkStage;

/** From one action, step and stage of an {@link ObviousModel} to another, and to the end. */
abstract class ObviousMoves extends ObviousState {

    ObviousMoves(Plan plan) {
        super(plan);
    }

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

    /** Back to the step last opened with nothing live. */
    void toCold(String taken) {
        String[] cold = log.last("cold").map(l -> l.about().split("/")).orElse(new String[] { "0", "0" });
        go(Integer.parseInt(cold[0]), Integer.parseInt(cold[1]), taken, Outcome.UNDECIDED);
    }

    void conclude(Verdict verdict, Outcome outcome) {
        close(outcome);
        late();
        // A plan's own end and the make-safe key never reject.
        if (verdict == Verdict.REJECTED) {
            say("nonconformity " + here().name() + "." + stepName());
        }
        reach(verdict);
    }

    void reach(Verdict verdict) {
        say("concluding " + verdict);
        concluding = Optional.of(verdict);
        openPreconditions.clear();
        offBeforePowerUp = false;
        arrive(plan.stages().size(), 0);
    }

    void close(Outcome outcome) {
        if (inStep) {
            boolean counts = worst == Outcome.CONFORMS || outcome == Outcome.DOES_NOT_CONFORM || outcome == Outcome.UNDECIDED;
            say("closed " + stepName() + " " + (counts ? outcome : worst));
            inStep = false;
        }
    }

    /** Notes a stage that took too long; its time counts from its first step opened since the test came into it. */
    void late() {
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

    int firstInOrder(int from) {
        int index = from;
        while (index < plan.stages().size() && plan.stages().get(index) instanceof WorkStage w && w.onDemand()) {
            index++;
        }
        return index;
    }

    // ---- on and on

    void next() {
        action += group().size();
        told.clear();
        settle();
    }

    void settle() {
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
        } else if (current() instanceof Action.Derive derive) {
            derive(derive);
        } else if (current() instanceof Action.Branch branch && branch.remembered().filter(answers::containsKey).isPresent()) {
            branch(branch, answers.get(branch.remembered().get()));
        } else if (current() instanceof Action.Wait wait) {
            waitBegins(wait);
        }
    }

    abstract void derive(Action.Derive d);

    void branch(Action.Branch b, boolean yes) {
        say("decided " + b.id() + " CONFORMS");
        if (yes != b.when()) {
            next();
        } else if (b.to().isPresent()) {
            lead(b.to().get(), b.id(), Outcome.CONFORMS);
        } else {
            action = actions().size();
            told.clear();
            settle();
        }
    }

    void waitBegins(Action.Wait wait) {
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

    void finish() {
        offBeforeTheEnd = !live.isEmpty();
        if (offBeforeTheEnd) {
            arrive(stage, step);
        } else {
            say("made safe");
            say((rehearsal ? "would be " : "verdict ") + concluding.orElseThrow());
            ended = concluding;
        }
    }
}
