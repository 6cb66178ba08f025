package org.benchwright.engine.tests;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Quantity;
import org.benchwright.engine.WatchStanding;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.WatchFact;
import org.benchwright.engine.event.WatchFact.Sampled;
import org.benchwright.engine.plan.SoakStage;

/** A watch that samples a unit on soak every minute and tells what a tape says: runs, stops, silence, a room that grows warm. */
final class RandomWatch {

    static final Duration EVERY = Duration.ofMinutes(1);
    private static final List<Integer> RUNS = List.of(1, 9, 59, 300, 1_500, 4_400);

    private final Choices choices;
    private int number;
    private boolean sees;
    private boolean outside;
    /** On the clock of the watch that tells now. */
    private Duration offset = Duration.ZERO;
    private Optional<Sampled> last = Optional.empty();

    /** What a plan asks of it: with looks beside it or instead of them. */
    static SoakStage.Watch asked(Choices choices) {
        return new SoakStage.Watch(EVERY, 2, 3, choices.oneIn(2) ? Optional.of("looks") : Optional.empty());
    }

    RandomWatch(Choices choices) {
        this.choices = choices;
    }

    /** Lets time pass and tells something; false if the test does not take it. */
    boolean tell(Walk walk, SoakStage soak) {
        int kind = choices.below(14);
        if (number == 0 || kind == 0) {
            return begin(walk, soak);
        }
        WatchFact.Watcher by = new WatchFact.Watcher(number, false);
        if (!sees || last.isEmpty()) {
            Sampled at = pass(walk, EVERY);
            return told(walk, new WatchFact.Sees(soak.name(), by, "a unit", at), true, at);
        }
        Sampled from = last.get();
        if (kind <= 4) {
            int samples = choices.of(RUNS);
            Sampled to = pass(walk, EVERY.multipliedBy(samples));
            return told(walk, new WatchFact.Held(soak.name(), by, from, to, samples + 1L, 0, List.of()), true, to);
        } else if (kind <= 7) {
            Sampled bad = pass(walk, EVERY);
            int count = choices.oneIn(2) ? 2 : 1;
            if (count == 2) {
                Sampled second = pass(walk, EVERY);
                // Told first, and yet behind the stop.
                boolean warm = !outside && choices.oneIn(3)
                        && walk.watch(new WatchFact.ConditionCrossed(soak.name(), by, "ambient", false, Optional.of(bad),
                        second, Quantity.of("31", "degC")));
                outside |= warm;
            }
            return told(walk, new WatchFact.Changed(soak.name(), by, Optional.of(from), bad, count, "dark"), true, bad);
        } else if (kind == 8) {
            return told(walk, new WatchFact.Silent(soak.name(), by, Optional.of(from), "no answer"), false, from);
        }
        return condition(walk, soak, by, from);
    }

    /** If the test takes it that the unit is seen, another watch begins and can't see it; false if there is nothing to tell. */
    boolean end(Walk walk, SoakStage soak) {
        if (WatchStanding.of(walk.run()).filter(WatchStanding::seeing).isEmpty()) {
            return false;
        }
        number++;
        outside = false;
        boolean taken = walk.watch(new WatchFact.Silent(soak.name(), new WatchFact.Watcher(number, false), Optional.empty(), "no answer"));
        sees = false;
        last = Optional.empty();
        return taken;
    }

    private boolean begin(Walk walk, SoakStage soak) {
        WatchFact.Watcher next = new WatchFact.Watcher(number + 1, false);
        offset = Duration.ZERO;
        Sampled at = pass(walk, choices.of(List.of(Duration.ofSeconds(1), Duration.ofMinutes(5), Duration.ofHours(3))));
        boolean taken = told(walk, new WatchFact.Sees(soak.name(), next, "a unit", at), true, at);
        if (taken) {
            number++;
            outside = false;
        }
        return taken;
    }

    private boolean condition(Walk walk, SoakStage soak, WatchFact.Watcher by, Sampled from) {
        Sampled after = pass(walk, EVERY);
        String value = outside ? "22" : "31";
        boolean taken = told(walk, new WatchFact.ConditionCrossed(soak.name(), by, "ambient", outside, Optional.of(from), after,
                Quantity.of(value, "degC")),
                sees, choices.oneIn(2) ? after : from);
        if (taken) {
            outside = !outside;
        }
        return taken;
    }

    /** The next sample; the wall goes on with the clock of the watch. */
    private Sampled pass(Walk walk, Duration time) {
        walk.after(time);
        offset = offset.plus(time);
        return new Sampled(walk.moment().instant(), offset, Optional.empty());
    }

    private boolean told(Walk walk, Fact fact, boolean seesThen, Sampled lastThen) {
        if (!walk.watch(fact)) {
            // Somebody has interrupted, or set the clock: this watch is given up.
            sees = false;
            last = Optional.empty();
            return false;
        }
        sees = seesThen;
        last = Optional.of(lastThen);
        return true;
    }
}
