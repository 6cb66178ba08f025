package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Fact.Sight;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.SoakStage;

/** The soak of an {@link ObviousModel}: a list of the times of its good looks. */
final class ObviousSoak {

    private final ObviousModel test;
    private final List<Duration> goodLooks = new ArrayList<>();

    ObviousSoak(ObviousModel test) {
        this.test = test;
    }

    boolean underWay() {
        return !goodLooks.isEmpty();
    }

    private Duration lasted() {
        return underWay() ? last().minus(goodLooks.get(0)) : Duration.ZERO;
    }

    private Duration last() {
        return goodLooks.get(goodLooks.size() - 1);
    }

    Duration witnessed() {
        return test.plan.family().stopStays() ? lasted() : Duration.ZERO;
    }

    private Duration due(SoakStage soak) {
        Duration left = soak.lasting().minus(lasted());
        return left.compareTo(soak.lookEvery()) < 0 ? left : soak.lookEvery();
    }

    void looked(Fact.Looked look) {
        SoakStage soak = (SoakStage) test.here();
        boolean outside = false;
        for (int i = 0; i < look.readings().size(); i++) {
            if (!soak.conditions().get(i).limits().contains(look.readings().get(i).value())) {
                outside = true;
                test.say("departure OUTSIDE_CONDITIONS");
            }
        }
        if (underWay() && test.now.minus(last()).minus(due(soak)).compareTo(soak.lookTolerance()) > 0) {
            test.say("departure LATE_LOOK");
        }
        if (look.answer() == Sight.NO) {
            end(Outcome.DOES_NOT_CONFORM);
            test.lead(outside ? soak.stoppedOutside() : soak.stopped(), "look", Outcome.DOES_NOT_CONFORM);
        } else if (underWay()) {
            good(soak);
        } else {
            goodLooks.add(test.now);
            test.note("soak begun", soak.name());
            test.say("soak begun " + test.log.count("soak begun", soak.name()));
        }
    }

    private void good(SoakStage soak) {
        Duration since = test.now.minus(last());
        Duration before = witnessed();
        goodLooks.add(test.now);
        boolean latches = test.plan.family().stopStays();
        if (witnessed().compareTo(soak.lasting()) >= 0) {
            end(Outcome.CONFORMS);
            test.leave();
        } else if (!latches && soak.gap().isPresent() && since.compareTo(soak.gap().get().atMost()) > 0) {
            undecided(before, soak.gap().get().instead());
        } else if (!latches && lasted().compareTo(soak.lasting()) >= 0) {
            undecided(before, Parts.undecided("unwitnessed"));
        } else {
            test.say("soak witnessed " + witnessed() + ", next in " + due(soak));
        }
    }

    private void undecided(Duration witnessed, Move move) {
        goodLooks.clear();
        test.say("soak ended UNDECIDED " + witnessed);
        test.lead(move, "look", Outcome.UNDECIDED);
    }

    private void end(Outcome outcome) {
        test.say("soak ended " + outcome + " " + witnessed());
        goodLooks.clear();
    }

    void abandoned() {
        if (underWay()) {
            end(Outcome.UNDECIDED);
        }
    }

    void powerLost(SoakStage soak) {
        end(Outcome.UNDECIDED);
        Move move = soak.gap().map(SoakStage.Gap::instead).orElse(Parts.undecided("power lost"));
        String again = soak.name() + " again";
        while (move instanceof Move.BeginAgain b && test.log.count("taken", again) >= b.bound().atMost()) {
            move = b.bound().instead();
        }
        if (move instanceof Move.BeginAgain) {
            test.toCold(again);
        } else {
            Verdict verdict = move instanceof Move.Conclude c ? c.verdict() : Verdict.UNDECIDED;
            test.lead(new Move.Conclude(verdict, "power lost"), "power", Outcome.UNDECIDED);
        }
    }
}
