package org.benchwright.engine.internal;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.plan.WorkStage;

/** What a plan needs its instruments for. */
final class Instruments {

    private Instruments() {
    }

    /** The units in which readings of this instrument are decided. */
    static List<UnitOfMeasure> decidedIn(Plan plan, String instrument) {
        return actions(plan).flatMap(a -> decided(a, instrument).stream()).distinct().toList();
    }

    private static Optional<UnitOfMeasure> decided(Action action, String instrument) {
        if (action instanceof Action.Measure m && m.instrument().equals(instrument)) {
            return Optional.of(m.limits().unit());
        } else if (action instanceof Action.Grid g && g.instrument().equals(Optional.of(instrument))) {
            return Optional.of(g.limits().unit());
        }
        return Optional.empty();
    }

    /** True if a guard band is made from this instrument's uncertainty somewhere: then it cannot be left unknown. */
    static boolean guards(Plan plan, String instrument) {
        return actions(plan).anyMatch(a -> a instanceof Action.Measure m && m.instrument().equals(instrument) && m.rule().isGuarded()
                || a instanceof Action.Grid g && g.instrument().equals(Optional.of(instrument)) && g.rule().isGuarded());
    }

    static Stream<Action> actions(Plan plan) {
        Stream<WorkStage> stages = plan.stages().stream().filter(WorkStage.class::isInstance).map(WorkStage.class::cast);
        return Stream.concat(stages, Stream.of(plan.makeSafe())).flatMap(stage -> stage.steps().stream())
                .flatMap(step -> step.actions().stream());
    }
}
