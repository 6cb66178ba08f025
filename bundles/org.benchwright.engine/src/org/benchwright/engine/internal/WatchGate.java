package org.benchwright.engine.internal;

import static org.benchwright.engine.internal.Refusals.refused;
import static org.benchwright.engine.internal.Refusals.require;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.event.WatchFact.Sampled;
import org.benchwright.engine.plan.Condition;
import org.benchwright.engine.plan.SoakStage;

/** Whether a test takes what a watch tells. */
final class WatchGate {

    /** Wall time and the watch's own clock may differ by as much within a run; at a larger step the watch begins another. */
    private static final Duration CLOCK_TOLERANCE = Duration.ofSeconds(2);

    private final RunState s;
    private final SoakStage soak;
    private final SoakStage.Watch asked;
    private final Moment moment;

    private WatchGate(RunState s, SoakStage soak, SoakStage.Watch asked, Moment moment) {
        this.s = s;
        this.soak = soak;
        this.asked = asked;
        this.moment = moment;
    }

    static void check(RunState s, WatchFact fact, Moment moment) throws RefusedException {
        SoakStage soak = s.atSoak().filter(at -> s.soak().begun() && at.name().equals(fact.stage()))
                .orElseThrow(() -> refused("watch.noSoak", fact.stage()));
        SoakStage.Watch asked = soak.watch().orElseThrow(() -> refused("watch.notAsked", soak.name()));
        Moment last = s.lastMoment();
        require(moment.sitting() == last.sitting() && moment.offset().equals(last.offset()), "watch.sitting");
        require(!fact.by().simulated() || s.opening().rehearsal(), "watch.simulated");
        new WatchGate(s, soak, asked, moment).content(fact);
    }

    private void content(WatchFact fact) throws RefusedException {
        if (fact instanceof WatchFact.Sees f) {
            mayBegin(f.by(), f.at());
            require(!f.source().isBlank(), "refused.emptyText");
        } else if (fact instanceof WatchFact.Held f) {
            held(f);
        } else if (fact instanceof WatchFact.Changed f) {
            changed(f);
        } else if (fact instanceof WatchFact.ConditionCrossed f) {
            condition(f);
        } else if (fact instanceof WatchFact.Silent f) {
            if (f.lastSeen().isPresent()) {
                goesOn(f.by(), f.lastSeen().get());
            } else {
                next(f.by());
            }
            require(!f.why().isBlank(), "refused.emptyText");
        }
    }

    /** The same watch that does not see, or the next one. */
    private void mayBegin(WatchFact.Watcher by, Sampled at) throws RefusedException {
        boolean same = by.number() == s.watch().number();
        next(by);
        sample(at);
        require(!same || at.offset().compareTo(s.watch().offset()) >= 0, "watch.time");
        require(!at.received().isBefore(s.watch().received()), "watch.clockBack");
    }

    private void next(WatchFact.Watcher by) throws RefusedException {
        boolean same = by.number() == s.watch().number();
        require(same && by.number() > 0 && !s.watch().seeing() || by.number() == s.watch().number() + 1, "watch.number", by.number(),
                s.watch().number());
        require(!same || by.simulated() == s.watch().simulated(), "watch.simulatedChanged");
    }

    /** The watch that sees, at a sample that is not before its last one. */
    private void goesOn(WatchFact.Watcher by, Sampled at) throws RefusedException {
        require(by.number() == s.watch().number() && s.watch().seeing(), "watch.number", by.number(), s.watch().number());
        require(by.simulated() == s.watch().simulated(), "watch.simulatedChanged");
        sample(at);
        require(at.offset().compareTo(s.watch().offset()) >= 0, "watch.time");
        require(!at.received().isBefore(s.watch().received()), "watch.clockBack");
    }

    private void sample(Sampled at) throws RefusedException {
        Instant began = s.soak().began().orElseThrow().moment().instant();
        require(!at.offset().isNegative() && !at.received().isBefore(began), "watch.time");
        require(!at.received().isAfter(moment.instant().plus(CLOCK_TOLERANCE)), "watch.clockBack");
    }

    /** Two samples, the second not before the first, and both clocks agree on the time between them. */
    private void between(Sampled from, Sampled to) throws RefusedException {
        sample(to);
        Duration time = to.offset().minus(from.offset());
        Duration wall = Duration.between(from.received(), to.received());
        require(!time.isNegative() && time.minus(wall).abs().compareTo(CLOCK_TOLERANCE) <= 0, "watch.time");
    }

    private void held(WatchFact.Held f) throws RefusedException {
        goesOn(f.by(), f.from());
        between(f.from(), f.to());
        Duration time = f.to().offset().minus(f.from().offset());
        require(f.samples() >= 1 && f.missed() >= 0 && f.missed() <= (f.samples() - 1) * Math.max(0, asked.silentAfter() - 1), "watch.samples");
        // A quarter more than asked for, and a sample that came late: a busy bench is not quite steady. Fewer samples are silence, and no run.
        long samples = Math.min(f.samples() - 1 + f.missed(), Integer.MAX_VALUE);
        Duration most = asked.every().multipliedBy(samples).multipliedBy(5).dividedBy(4).plus(asked.every()).plus(CLOCK_TOLERANCE);
        require(time.compareTo(most) <= 0, "watch.samples");
        for (WatchFact.ConditionRange range : f.conditions()) {
            Condition condition = condition(range.condition());
            dimension(condition, range.low());
            dimension(condition, range.high());
            require(range.low().compareTo(range.high()) <= 0, "watch.range", range.condition());
        }
        require(f.conditions().stream().map(WatchFact.ConditionRange::condition).distinct().count() == f.conditions().size(), "watch.range", "");
    }

    private void changed(WatchFact.Changed f) throws RefusedException {
        if (f.lastGood().isPresent()) {
            goesOn(f.by(), f.lastGood().get());
            between(f.lastGood().get(), f.firstBad());
        } else {
            mayBegin(f.by(), f.firstBad());
        }
        require(f.bad() >= 1 && f.bad() <= asked.stopAfterBad(), "watch.samples");
        Duration passed = Duration.between(f.firstBad().received(), moment.instant()).plus(CLOCK_TOLERANCE);
        require(asked.every().multipliedBy(f.bad() - 1L).multipliedBy(3).dividedBy(4).compareTo(passed) <= 0, "watch.samples");
    }

    private void condition(WatchFact.ConditionCrossed f) throws RefusedException {
        Condition condition = condition(f.condition());
        boolean same = f.by().number() == s.watch().number();
        if (same) {
            require(f.by().simulated() == s.watch().simulated(), "watch.simulatedChanged");
        } else {
            next(f.by());
        }
        sample(f.after());
        if (f.before().isPresent()) {
            sample(f.before().get());
            between(f.before().get(), f.after());
        }
        dimension(condition, f.value());
        require(f.inside() == (same && s.watch().outside(f.condition())) && condition.limits().contains(f.value()) == f.inside(), "watch.range",
                f.condition());
    }

    private Condition condition(String name) throws RefusedException {
        List<Condition> all = soak.conditions();
        Optional<Condition> found = all.stream().filter(c -> c.name().equals(name)).findFirst();
        return found.orElseThrow(() -> refused("watch.condition", name, soak.name()));
    }

    private static void dimension(Condition condition, Quantity value) throws RefusedException {
        require(condition.limits().unit().sameDimension(value.unit()), "refused.dimension", value, condition.limits().unit().word());
    }
}
