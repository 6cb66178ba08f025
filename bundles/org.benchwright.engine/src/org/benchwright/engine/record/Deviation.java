package org.benchwright.engine.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Observation;
import org.benchwright.engine.event.TestEvent;

/**
 * Something in a test that an auditor decides on: the work departed from the procedure, or the unit does not conform.
 *
 * @param sequence  number of the event that noted it
 * @param departure which way the work departed; empty for a nonconformity
 * @param stage     the stage in which it was noted; empty before the first
 * @param step      the step; empty on a soak and before the first
 * @param instant   when
 * @param words     what
 */
public record Deviation(long sequence, Optional<DepartureKind> departure, String stage, String step, Instant instant, String words) {

    /** All of a test, in order. What followed from an entry that was struck as a slip is none. */
    public static List<Deviation> of(TestRun run) {
        List<Deviation> found = new ArrayList<>();
        String stage = "";
        String step = "";
        for (TestEvent event : run.holding()) {
            EventBody body = event.body();
            if (body instanceof Derived.StepOpened opened) {
                stage = opened.stage();
                step = opened.step();
            } else if (body instanceof Observation.Looked looked) {
                stage = looked.stage();
                step = "";
            } else if (body instanceof Derived.DepartureNoted noted) {
                found.add(new Deviation(event.sequence(), Optional.of(noted.kind()), stage, step, event.moment().instant(), noted.words()));
            } else if (body instanceof Derived.NonconformityNoted noted) {
                found.add(new Deviation(event.sequence(), Optional.empty(), noted.stage(), noted.step(), event.moment().instant(),
                        noted.words()));
            }
        }
        return List.copyOf(found);
    }

    /** Whether the unit does not conform; else the work departed from the procedure. */
    public boolean nonconformity() {
        return departure.isEmpty();
    }
}
