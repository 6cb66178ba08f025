package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.engine.plan.SoakStage;

/**
 * A soak under way.
 *
 * @param begun     false where none is under way
 * @param lastGood  the last good look
 * @param lasted    time from the first good look to the last one
 * @param witnessed the part of it that counts as evidence
 */
public record Soak(boolean begun, Optional<Stamp> lastGood, Duration lasted, Duration witnessed) {

    static final Soak NONE = new Soak(false, Optional.empty(), Duration.ZERO, Duration.ZERO);

    static Soak begin(Stamp at) {
        return new Soak(true, Optional.of(at), Duration.ZERO, Duration.ZERO);
    }

    /** The soak after another good look. */
    Soak goodLook(Stamp at, Duration nowWitnessed) {
        Duration since = lastGood.map(last -> at.age().minus(last.age())).orElse(Duration.ZERO);
        return new Soak(true, Optional.of(at), lasted.plus(since), nowWitnessed);
    }

    /** Time from the last good look until the next one is due: the interval of the plan, or what is left of the soak. */
    Duration due(SoakStage plan) {
        Duration left = plan.lasting().minus(lasted);
        return left.compareTo(plan.lookEvery()) < 0 ? left : plan.lookEvery();
    }
}
