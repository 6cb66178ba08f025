package org.benchwright.engine.internal;

import java.time.Duration;
import java.util.Optional;

import org.benchwright.engine.event.Moment;
import org.benchwright.engine.plan.SoakStage;

/**
 * A soak under way.
 *
 * @param begun     false where none is under way
 * @param attempt   from 1
 * @param lastGood  the last good look
 * @param witnessed time that counts as evidence
 */
public record Soak(boolean begun, int attempt, Optional<Moment> lastGood, Duration witnessed) {

    static final Soak NONE = new Soak(false, 0, Optional.empty(), Duration.ZERO);

    static Soak begin(int attempt, Moment at) {
        return new Soak(true, attempt, Optional.of(at), Duration.ZERO);
    }

    Soak goodLook(Moment at, Duration nowWitnessed) {
        return new Soak(true, attempt, Optional.of(at), nowWitnessed);
    }

    Soak ended() {
        return new Soak(false, attempt, Optional.empty(), Duration.ZERO);
    }

    /** Time from the last good look until the next one is due: the interval of the plan, or what is left of the soak. */
    Duration due(SoakStage plan) {
        Duration left = plan.lasting().minus(witnessed);
        return left.compareTo(plan.lookEvery()) < 0 ? left : plan.lookEvery();
    }
}
