package org.benchwright.engine;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.event.DepartureKind;
import org.benchwright.engine.event.Derived;
import org.benchwright.engine.event.Derived.Outcome;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.TestEvent;

/**
 * One beginning of a soak and how it went on. A soak that has to begin again after a loss of power is another attempt: its hours are
 * counted anew.
 *
 * @param stage     the soak's name
 * @param begun     false where the unit was not in the mode that the soak watches
 * @param witnessed time that counts as evidence; nothing of it where a stop of the family does not stay
 * @param stoppedBy where it stopped: {@code witnessed} and the time from the last good look to the one that found it stopped
 * @param outside   true if it was found stopped while the conditions around it were outside their limits: that is not charged to the unit
 * @param outcome   what it came to; empty while it goes on
 */
public record SoakAttempt(String stage, boolean begun, Duration witnessed, Optional<Duration> stoppedBy, boolean outside,
        Optional<Outcome> outcome) {

    /** All attempts of a test so far, in order; entries that were struck do not count. */
    public static List<SoakAttempt> of(TestRun run) {
        Reader reader = new Reader();
        run.holding().forEach(reader::take);
        return reader.attempts();
    }

    /** True if it ended as it should: without a stop, after the time that was asked for. */
    public boolean passed() {
        return outcome.equals(Optional.of(Outcome.CONFORMS));
    }

    /** True if the unit stopped by itself. */
    public boolean stopped() {
        return begun && !outside && outcome.equals(Optional.of(Outcome.DOES_NOT_CONFORM));
    }

    /** Follows the events of one test. */
    private static final class Reader {
        private final List<SoakAttempt> done = new ArrayList<>();
        private Optional<SoakAttempt> going = Optional.empty();
        private Instant lastGood = Instant.EPOCH;
        private boolean outside;

        void take(TestEvent event) {
            Instant now = event.moment().instant();
            outside = !(event.body() instanceof Fact) && outside || event.body() instanceof Derived.DepartureNoted noted
                    && noted.kind() == DepartureKind.OUTSIDE_CONDITIONS;
            if (event.body() instanceof Derived.SoakBegun begun) {
                going = Optional.of(new SoakAttempt(begun.stage(), true, Duration.ZERO, Optional.empty(), false, Optional.empty()));
                lastGood = now;
            } else if (event.body() instanceof Derived.SoakWitnessed good) {
                going = Optional.of(new SoakAttempt(good.stage(), true, good.witnessed(), Optional.empty(), false, Optional.empty()));
                lastGood = now;
            } else if (event.body() instanceof Derived.SoakEnded ended) {
                done.add(ended(ended, now));
                going = Optional.empty();
            }
        }

        private SoakAttempt ended(Derived.SoakEnded ended, Instant now) {
            boolean begun = going.isPresent();
            boolean stopped = begun && !outside && ended.outcome() == Outcome.DOES_NOT_CONFORM;
            // A clock that was put back between the two looks must not make the second come first.
            Duration since = now.isBefore(lastGood) ? Duration.ZERO : Duration.between(lastGood, now);
            return new SoakAttempt(ended.stage(), begun, ended.witnessed(),
                    stopped ? Optional.of(ended.witnessed().plus(since)) : Optional.empty(), begun && outside && ended.outcome() == Outcome.DOES_NOT_CONFORM,
                    Optional.of(ended.outcome()));
        }

        List<SoakAttempt> attempts() {
            List<SoakAttempt> all = new ArrayList<>(done);
            going.ifPresent(all::add);
            return List.copyOf(all);
        }
    }
}
