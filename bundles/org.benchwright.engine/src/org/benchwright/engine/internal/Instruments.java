package org.benchwright.engine.internal;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.Limits;
import org.benchwright.core.UnitOfMeasure;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.plan.Action;
import org.benchwright.engine.plan.Plan;

/** What a plan needs its instruments for. */
final class Instruments {

    private Instruments() {
    }

    /** The due date of a calibration that is past it; the day of the due date itself is in time, by UTC. */
    static Optional<LocalDate> pastDue(Observation.InstrumentNamed named, Instant now) {
        return named.due().filter(due -> now.atZone(ZoneOffset.UTC).toLocalDate().isAfter(due));
    }

    /** The units in which readings of this instrument are decided. */
    static List<UnitOfMeasure> decidedIn(Plan plan, String instrument) {
        Stream<UnitOfMeasure> before = plan.preconditions().stream().filter(p -> p.instrument().equals(Optional.of(instrument)))
                .flatMap(p -> p.reading().stream()).map(Limits::unit);
        return Stream.concat(before, actions(plan).flatMap(a -> decided(a, instrument).stream())).distinct().toList();
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
        return derivesGuarded(plan, instrument) || actions(plan).anyMatch(a -> a instanceof Action.Measure m && m.instrument().equals(instrument) && m.rule().isGuarded()
                || a instanceof Action.Grid g && g.instrument().equals(Optional.of(instrument)) && g.rule().isGuarded());
    }

    /** Whether a guarded derived value rests on a reading of it. */
    private static boolean derivesGuarded(Plan plan, String instrument) {
        List<String> needed = actions(plan).filter(a -> a instanceof Action.Derive d && d.rule().isGuarded())
                .flatMap(a -> DerivedValues.names(((Action.Derive) a).value()).stream()).toList();
        return plan.steps().anyMatch(step -> step.actions().stream().anyMatch(a -> a instanceof Action.Measure m
                && m.instrument().equals(instrument) && needed.contains(step.name() + "." + m.id())));
    }

    static Stream<Action> actions(Plan plan) {
        return plan.steps().flatMap(step -> step.actions().stream());
    }
}
