package org.benchwright.language.internal.proof;

import java.time.Duration;
import java.util.List;

import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.engine.plan.Step;
import org.benchwright.language.proof.TimeSpan;

/** How long one step or soak takes by what its text says. */
public final class StepTimes {

    private StepTimes() {
    }

    /** A step that is carried out: a person is needed for as long as it takes, the place for no less than what has to pass in it. */
    static TimeSpan of(Step step) {
        Duration takes = step.takes().orElse(Duration.ZERO);
        Duration passes = passing(step.actions());
        return new TimeSpan(takes.compareTo(passes) >= 0 ? takes : passes, takes);
    }

    /** A soak that lasts; how long a look takes is said nowhere. */
    static TimeSpan of(SoakStage soak) {
        return new TimeSpan(soak.lasting(), Duration.ZERO);
    }

    /** The first look begins a soak; then there is one each time that one is due, the last when it is over. */
    public static int looks(Duration lasting, Duration every) {
        long between = lasting.toMillis() / every.toMillis() + (lasting.toMillis() % every.toMillis() == 0 ? 0 : 1);
        return Math.toIntExact(Math.min(Integer.MAX_VALUE - 1L, between) + 1);
    }

    /** Waits and settling times, and of each group of expectations that run together the latest deadline. */
    private static Duration passing(List<Action> actions) {
        Duration all = Duration.ZERO;
        Duration group = Duration.ZERO;
        for (Action action : actions) {
            if (action instanceof Action.Expect expect) {
                group = longer(group, expect.window().closes());
                continue;
            }
            all = all.plus(group);
            group = Duration.ZERO;
            if (action instanceof Action.Wait wait) {
                all = all.plus(wait.time());
            } else if (action instanceof Action.Grid grid) {
                all = all.plus(grid.settle().multipliedBy(cells(grid)));
            }
        }
        return all.plus(group);
    }

    static long cells(Action.Grid grid) {
        return grid.axes().stream().mapToLong(axis -> axis.values().size()).reduce(1, Math::multiplyExact);
    }

    private static Duration longer(Duration one, Duration other) {
        return one.compareTo(other) >= 0 ? one : other;
    }
}
