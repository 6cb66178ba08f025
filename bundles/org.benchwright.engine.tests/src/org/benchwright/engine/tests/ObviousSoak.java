package org.benchwright.engine.tests;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Verdict;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.Observation.Sight;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.event.WatchFact.Sampled;
import org.benchwright.engine.plan.Move;
import org.benchwright.engine.plan.SoakStage;

/** The soak of an {@link ObviousModel}: a list of when and how the unit was seen as it must be, gone through again for each question. */
final class ObviousSoak {

    private final ObviousModel test;
    private final List<Seen> seen = new ArrayList<>();
    /** What the watch that tells now has told of conditions. */
    private final List<WatchFact.ConditionCrossed> conditions = new ArrayList<>();
    private int watch;
    private boolean watchSees;

    /**
     * The unit was seen as it must be.
     *
     * @param look true by a person, false by a watch
     * @param held how long a watch had seen it so without a break
     */
    private record Seen(Duration age, boolean look, Duration held) {
    }

    ObviousSoak(ObviousModel test) {
        this.test = test;
    }

    boolean underWay() {
        return !seen.isEmpty();
    }

    private Duration began() {
        return seen.get(0).age();
    }

    private Duration lasted() {
        return underWay() ? lastLook().minus(began()) : Duration.ZERO;
    }

    private Duration lastLook() {
        return seen.stream().filter(Seen::look).map(Seen::age).reduce((before, after) -> after).orElseThrow();
    }

    private Duration lastSeen() {
        return seen.stream().map(Seen::age).max(Duration::compareTo).orElseThrow();
    }

    private boolean watchSaw() {
        return seen.stream().anyMatch(one -> !one.held().isZero());
    }

    private boolean latches() {
        return test.plan.family().stopStays();
    }

    /** A watch's time counts; where a stop stays, so does all the time between two looks, however much of it was watched. */
    Duration witnessed() {
        Duration all = Duration.ZERO;
        Duration atLook = Duration.ZERO;
        Optional<Duration> before = Optional.empty();
        for (Seen one : seen) {
            all = all.plus(one.held());
            if (one.look()) {
                if (latches() && before.isPresent()) {
                    Duration byLooks = atLook.plus(one.age().minus(before.get()));
                    all = byLooks.compareTo(all) > 0 ? byLooks : all;
                }
                atLook = all;
                before = Optional.of(one.age());
            }
        }
        return all;
    }

    /** From the last look on; where a watch does instead of looks, from when it last saw the unit. */
    private Duration due(SoakStage soak) {
        boolean instead = soak.watch().isPresent() && soak.watch().get().instead().isPresent() && watchSaw();
        Duration left = soak.lasting().minus(instead ? witnessed() : lasted());
        Duration next = soak.lookEvery();
        if (left.compareTo(next) < 0 && (!watchSaw() || left.compareTo(Duration.ZERO) > 0)) {
            next = left;
        }
        return instead ? next.plus(lastSeen().minus(lastLook())) : next;
    }

    void nothingSeenLaterThan(Duration age) {
        seen.replaceAll(one -> one.age().compareTo(age) > 0 ? new Seen(age, one.look(), one.held()) : one);
    }

    private boolean late(SoakStage soak, Duration age) {
        return underWay() && age.minus(lastLook()).minus(due(soak)).compareTo(soak.lookTolerance()) > 0;
    }

    // ---- looks

    void looked(Observation.Looked look) {
        SoakStage soak = (SoakStage) test.here();
        boolean outside = false;
        for (int i = 0; i < look.readings().size(); i++) {
            if (!soak.conditions().get(i).limits().contains(look.readings().get(i).value())) {
                outside = true;
                test.say("departure OUTSIDE_CONDITIONS");
            }
        }
        if (late(soak, test.now)) {
            test.say("departure LATE_LOOK");
        }
        if (look.answer() == Sight.NO) {
            end(Outcome.DOES_NOT_CONFORM);
            test.lead(outside ? soak.stoppedOutside() : soak.stopped(), "look", Outcome.DOES_NOT_CONFORM);
        } else if (underWay()) {
            good(soak);
        } else {
            seen.add(new Seen(test.now, true, Duration.ZERO));
            unseen();
            test.note("soak begun", soak.name());
            test.say("soak begun " + test.log.count("soak begun", soak.name()));
        }
    }

    private void good(SoakStage soak) {
        boolean gap = gapSince(soak, lastSeen(), test.now);
        Duration before = witnessed();
        seen.add(new Seen(test.now, true, Duration.ZERO));
        if (witnessed().compareTo(soak.lasting()) >= 0) {
            end(Outcome.CONFORMS);
            test.leave();
        } else if (gap) {
            undecided(before, soak.gap().get().instead(), "look");
        } else if (lasted().compareTo(soak.lasting()) >= 0 && !(watchSees && watchSaw())) {
            undecided(before, Parts.undecided("unwitnessed"), "look");
        } else {
            test.say("soak witnessed " + witnessed() + ", next in " + due(soak));
        }
    }

    private boolean gapSince(SoakStage soak, Duration last, Duration now) {
        return !latches() && soak.gap().isPresent() && now.minus(last).compareTo(soak.gap().get().atMost()) > 0;
    }

    private void undecided(Duration witnessed, Move move, String by) {
        forget();
        test.say("soak ended UNDECIDED " + witnessed);
        test.lead(move, by, Outcome.UNDECIDED);
    }

    private void end(Outcome outcome) {
        test.say("soak ended " + outcome + " " + witnessed());
        forget();
    }

    private void forget() {
        seen.clear();
        unseen();
    }

    private void unseen() {
        watchSees = false;
        conditions.clear();
    }

    // ---- what a watch tells

    void told(WatchFact fact, Instant wall) {
        SoakStage soak = (SoakStage) test.here();
        boolean instead = soak.watch().get().instead().isPresent();
        Optional<Duration> from = first(fact).map(sample -> instead ? age(sample, wall) : test.now);
        boolean due = from.isPresent() && late(soak, from.get());
        toldInTime(soak, fact, wall);
        if (due && !late(soak, from.get())) {
            // Nobody is asked for it any more.
            test.say("departure LATE_LOOK");
        }
    }

    private static Optional<Sampled> first(WatchFact fact) {
        if (fact instanceof WatchFact.Sees sees) {
            return Optional.of(sees.at());
        } else if (fact instanceof WatchFact.Held held) {
            return Optional.of(held.from());
        } else if (fact instanceof WatchFact.Changed changed) {
            return Optional.of(changed.lastGood().orElse(changed.firstBad()));
        }
        return Optional.empty();
    }

    private void toldInTime(SoakStage soak, WatchFact fact, Instant wall) {
        if (fact.by().number() != watch) {
            watch = fact.by().number();
            unseen();
        }
        if (fact instanceof WatchFact.Sees f) {
            watchSees = true;
            Duration at = age(f.at(), wall);
            if (gapSince(soak, lastSeen(), at)) {
                undecided(witnessed(), soak.gap().get().instead(), "watch");
            } else {
                seen.add(new Seen(at, false, Duration.ZERO));
            }
        } else if (fact instanceof WatchFact.Held f) {
            watchSees = true;
            seen.add(new Seen(age(f.to(), wall), false, f.to().offset().minus(f.from().offset())));
            if (witnessed().compareTo(soak.lasting()) >= 0) {
                end(Outcome.CONFORMS);
                test.leave();
            } else {
                test.say("soak witnessed " + witnessed() + ", next in " + due(soak).minus(test.now.minus(lastLook())));
            }
        } else if (fact instanceof WatchFact.Changed f) {
            changed(soak, f, wall);
        } else if (fact instanceof WatchFact.ConditionCrossed f) {
            conditions.add(f);
            if (!f.inside()) {
                test.say("departure OUTSIDE_CONDITIONS");
            }
        } else if (fact instanceof WatchFact.Silent) {
            watchSees = false;
        }
    }

    private void changed(SoakStage soak, WatchFact.Changed f, Instant wall) {
        watchSees = f.lastGood().isPresent();
        f.lastGood().ifPresent(good -> seen.add(new Seen(age(good, wall), false, Duration.ZERO)));
        if (f.bad() < soak.watch().get().stopAfterBad()) {
            return;
        }
        boolean outside = soak.conditions().stream().anyMatch(condition -> mayHaveBeenOutside(condition.name(), f));
        if (outside) {
            test.say("departure OUTSIDE_CONDITIONS");
        }
        end(Outcome.DOES_NOT_CONFORM);
        test.lead(outside ? soak.stoppedOutside() : soak.stopped(), "watch", Outcome.DOES_NOT_CONFORM);
    }

    /**
     * The stop lies behind its last good sample and not behind its first bad one. The condition was surely inside if it went out only behind the
     * latter, or was back before the former.
     */
    private boolean mayHaveBeenOutside(String condition, WatchFact.Changed stop) {
        List<WatchFact.ConditionCrossed> told = conditions.stream().filter(each -> each.condition().equals(condition)).toList();
        if (told.isEmpty()) {
            return false;
        }
        WatchFact.ConditionCrossed last = told.get(told.size() - 1);
        WatchFact.ConditionCrossed out = last.inside() ? told.get(told.size() - 2) : last;
        boolean wentOutLater = out.before().isPresent() && !out.before().get().offset().minus(stop.firstBad().offset()).isNegative();
        boolean cameBackBefore = last.inside() && stop.lastGood().isPresent()
                && !stop.lastGood().get().offset().minus(last.after().offset()).isNegative();
        return !wentOutLater && !cameBackBefore;
    }

    /** A sample came some time before it was told, by the wall; never before the soak began. */
    private Duration age(Sampled sample, Instant wall) {
        Duration earlier = Duration.between(sample.received(), wall);
        Duration age = earlier.isNegative() ? test.now : test.now.minus(earlier);
        return age.compareTo(began()) < 0 ? began() : age;
    }

    // ---- what else may end it

    void abandoned() {
        if (underWay()) {
            nobodyLooks((SoakStage) test.here());
            end(Outcome.UNDECIDED);
        }
    }

    private void nobodyLooks(SoakStage soak) {
        if (late(soak, test.now)) {
            test.say("departure LATE_LOOK");
        }
    }

    void powerLost(SoakStage soak) {
        nobodyLooks(soak);
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
