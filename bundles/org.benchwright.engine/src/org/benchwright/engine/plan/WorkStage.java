package org.benchwright.engine.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * A stage of steps.
 *
 * @param name     its name
 * @param title    its title
 * @param onDemand entered only by a move
 * @param atMost   the time it may take; longer is a departure
 * @param hazards  names of the hazards shown before its steps
 * @param steps    in order, one or more
 */
public record WorkStage(String name, String title, boolean onDemand, Optional<Duration> atMost, List<String> hazards,
        List<Step> steps) implements Stage {
    public WorkStage {
        hazards = List.copyOf(hazards);
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("stage " + name + " has no step");
        }
    }
}
