package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.engine.plan.SoakStage;

/**
 * A soak under way.
 *
 * @param begun      false where none is under way
 * @param began      the look that began it
 * @param lastGood   the last good look
 * @param witnessed  the time that counts as evidence
 * @param atLastLook how much of it there was at the last good look
 * @param watched    the time that a watch has seen; all of it is evidence
 * @param lastSeen   age of the test when the unit was last known to be as it must be, by a look or a watch
 */
public record SoakProgress(boolean begun, Optional<Stamp> began, Optional<Stamp> lastGood, Duration witnessed, Duration atLastLook, Duration watched,
        Duration lastSeen) {

    static final SoakProgress NONE = new SoakProgress(false, Optional.empty(), Optional.empty(), Duration.ZERO, Duration.ZERO, Duration.ZERO,
            Duration.ZERO);

    static SoakProgress begin(Stamp at) {
        return new SoakProgress(true, Optional.of(at), Optional.of(at), Duration.ZERO, Duration.ZERO, Duration.ZERO, at.age());
    }

    /** The soak after another good look. */
    SoakProgress goodLook(Stamp at, Duration nowWitnessed) {
        return new SoakProgress(true, began, Optional.of(at), nowWitnessed, nowWitnessed, watched, later(at.age()));
    }

    /** The soak after a watch has told how long it saw the unit as it must be, up to that age of the test. */
    SoakProgress held(Duration seen, Duration upTo) {
        return new SoakProgress(true, began, lastGood, witnessed.plus(seen), atLastLook, watched.plus(seen), later(upTo));
    }

    /** The soak after a watch saw the unit as it must be at that age of the test. */
    SoakProgress seen(Duration at) {
        return held(Duration.ZERO, at);
    }

    /** The soak at that age of the test, later than which nobody can have seen the unit. */
    SoakProgress notSeenAfter(Duration now) {
        return lastSeen.compareTo(now) <= 0 ? this : new SoakProgress(begun, began, lastGood, witnessed, atLastLook, watched, now);
    }

    private Duration later(Duration age) {
        return age.compareTo(lastSeen) > 0 ? age : lastSeen;
    }

    /** Time from the first good look to the last one. */
    Duration lasted() {
        return Duration.ZERO.plus(lastGood.map(Stamp::age).orElse(Duration.ZERO)).minus(beganAge());
    }

    /** Time from the first good look until the unit was last known to be as it must be. */
    Duration seenFor() {
        return lastSeen.minus(beganAge());
    }

    Duration beganAge() {
        return began.map(Stamp::age).orElse(Duration.ZERO);
    }

    /**
     * Time from the last good look until the next one is due: the interval of the plan, or what is left of the soak. Where a watch stands
     * in for looks, the interval counts from when it last saw the unit.
     */
    Duration due(SoakStage plan) {
        boolean standsIn = plan.watch().flatMap(SoakStage.Watch::instead).isPresent() && !watched.isZero();
        Duration from = standsIn ? lastSeen.minus(lastGood.map(Stamp::age).orElse(Duration.ZERO)) : Duration.ZERO;
        Duration left = plan.lasting().minus(standsIn ? witnessed : lasted());
        boolean last = left.compareTo(plan.lookEvery()) < 0 && !(left.isNegative() || left.isZero());
        return from.plus(last || watched.isZero() && left.compareTo(plan.lookEvery()) < 0 ? left : plan.lookEvery());
    }
}
