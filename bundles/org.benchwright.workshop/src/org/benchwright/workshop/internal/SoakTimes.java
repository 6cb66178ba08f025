package org.benchwright.workshop.internal;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.ledger.ProjectedTest;

/**
 * Between which witnessed times a unit stopped on its soak; of a soak that was begun again the last attempt. A soak that ended undecided
 * tells that the unit worked as long as it was witnessed.
 */
final class SoakTimes {

    private Duration witnessed = Duration.ZERO;
    private Optional<Instant> lastGood = Optional.empty();
    private Optional<Duration> stopped = Optional.empty();

    void take(TestEvent event) {
        Instant now = event.moment().instant();
        if (event.body() instanceof Derived.SoakBegun) {
            witnessed = Duration.ZERO;
            lastGood = Optional.of(now);
            stopped = Optional.empty();
        } else if (event.body() instanceof Derived.SoakWitnessed good) {
            witnessed = good.witnessed();
            lastGood = Optional.of(now);
        } else if (event.body() instanceof Derived.SoakEnded ended) {
            witnessed = ended.witnessed();
            stopped = ended.outcome() == Derived.Outcome.DOES_NOT_CONFORM
                    ? lastGood.map(good -> witnessed.plus(Duration.between(good, now))) : Optional.empty();
        }
    }

    /** What the soak tells; nothing where it never began, or ended before anything was witnessed. */
    Optional<ProjectedTest.Soak> told() {
        long after = witnessed.toSeconds();
        if (stopped.isPresent()) {
            return Optional.of(new ProjectedTest.Soak(after, Optional.of(Math.max(after + 1, stopped.get().toSeconds()))));
        }
        return after > 0 ? Optional.of(new ProjectedTest.Soak(after, Optional.empty())) : Optional.empty();
    }
}
