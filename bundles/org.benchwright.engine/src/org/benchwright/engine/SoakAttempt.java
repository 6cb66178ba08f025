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
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.engine.event.WatchFact;

/**
 * One beginning of a soak and how it went on. A soak that has to begin again after a loss of power is another attempt: its hours are
 * counted anew.
 *
 * @param stage     the soak's name
 * @param begun     false where the unit was not in the mode that the soak watches
 * @param witnessed time that counts as evidence; where a stop of the family does not stay only what a watch saw
 * @param stoppedBy where it stopped: {@code witnessed} and the time from when it was last known good to when it was found stopped
 * @param outside   true if it stopped while the conditions around it were, or may have been, outside their limits: that is not charged to the unit
 * @param outcome   what it came to; empty while it goes on
 * @param watching  what a watch saw of it; empty where nothing watched
 */
public record SoakAttempt(String stage, boolean begun, Duration witnessed, Optional<Duration> stoppedBy, boolean outside,
        Optional<Outcome> outcome, Optional<Watching> watching) {

    /**
     * What a watch saw of a soak.
     *
     * @param watched the time that it saw the unit as it must be; all of it counts as evidence
     * @param notSeen the rest of the time up to the stop, the end, or what was recorded last
     */
    public record Watching(Duration watched, Duration notSeen) {
    }

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
        private String stage = "";
        private boolean going;
        private Duration witnessed = Duration.ZERO;
        private Instant began = Instant.EPOCH;
        private Instant lastGood = Instant.EPOCH;
        private Instant last = Instant.EPOCH;
        private Optional<Instant> found = Optional.empty();
        private Optional<Moment> before = Optional.empty();
        /** How old the test is by the clocks of its sittings, which nobody sets. */
        private Duration age = Duration.ZERO;
        /** How old it was at the last good look; empty where a watch saw the unit later. */
        private Optional<Duration> ageAtLook = Optional.empty();
        private Duration watched = Duration.ZERO;
        private boolean watching;
        private boolean outside;
        private boolean toldByWatch;

        void take(TestEvent event) {
            Instant now = event.moment().instant();
            // What a watch tells repeats the sitting's own time, so that it does not make the test older.
            age = age.plus(before.map(event.moment()::since).orElse(Duration.ZERO));
            before = Optional.of(event.moment());
            if (event.body() instanceof Fact fact) {
                fact(fact);
            } else if (event.body() instanceof Derived.DepartureNoted noted) {
                outside = outside || noted.kind() == DepartureKind.OUTSIDE_CONDITIONS;
            } else if (event.body() instanceof Derived.SoakBegun begun) {
                begin(begun.stage(), now);
            } else if (event.body() instanceof Derived.SoakWitnessed good) {
                witnessed = good.witnessed();
                if (!toldByWatch) {
                    lastGood = now;
                    ageAtLook = Optional.of(age);
                }
            } else if (event.body() instanceof Derived.SoakEnded ended) {
                end(ended, now);
            }
            last = now.isAfter(last) ? now : last;
        }

        private void fact(Fact fact) {
            toldByWatch = fact instanceof WatchFact;
            outside = false;
            found = Optional.empty();
            if (fact instanceof WatchFact.Held held) {
                watching = true;
                watched = watched.plus(held.to().offset().minus(held.from().offset()));
                seen(held.to());
            } else if (fact instanceof WatchFact.Sees sees) {
                watching = true;
                seen(sees.at());
            } else if (fact instanceof WatchFact.Changed changed) {
                watching = true;
                changed.lastGood().ifPresent(this::seen);
                found = Optional.of(changed.firstBad().received());
            }
        }

        private void seen(WatchFact.Sampled sample) {
            ageAtLook = Optional.empty();
            lastGood = sample.received().isAfter(lastGood) ? sample.received() : lastGood;
        }

        private void begin(String soak, Instant now) {
            stage = soak;
            going = true;
            witnessed = Duration.ZERO;
            began = now;
            lastGood = now;
            ageAtLook = Optional.of(age);
            last = now;
            watched = Duration.ZERO;
            watching = false;
        }

        private void end(Derived.SoakEnded ended, Instant now) {
            Instant at = found.orElse(now);
            boolean bad = ended.outcome() == Outcome.DOES_NOT_CONFORM;
            boolean notTheUnits = going && bad && outside;
            Duration unseen = found.isEmpty() && ageAtLook.isPresent() ? age.minus(ageAtLook.get()) : time(lastGood, at);
            Optional<Duration> by = going && bad && !notTheUnits ? Optional.of(ended.witnessed().plus(unseen)) : Optional.empty();
            done.add(new SoakAttempt(ended.stage(), going, ended.witnessed(), by, notTheUnits, Optional.of(ended.outcome()), watching(at)));
            going = false;
        }

        private Optional<Watching> watching(Instant until) {
            Duration unseen = time(began, until).minus(watched);
            return going && watching ? Optional.of(new Watching(watched, unseen.isNegative() ? Duration.ZERO : unseen)) : Optional.empty();
        }

        /** A clock that was put back must not make the later one come first. */
        private static Duration time(Instant from, Instant to) {
            return to.isBefore(from) ? Duration.ZERO : Duration.between(from, to);
        }

        List<SoakAttempt> attempts() {
            List<SoakAttempt> all = new ArrayList<>(done);
            if (going) {
                all.add(new SoakAttempt(stage, true, witnessed, Optional.empty(), false, Optional.empty(), watching(last)));
            }
            return List.copyOf(all);
        }
    }
}
