package org.benchwright.engine.plan;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * One step of a stage.
 *
 * @param name        its name, unique in the procedure
 * @param instruction what to do
 * @param takes       how long it usually takes
 * @param hazards     names of the hazards shown before it
 * @param reveals     codes of the faults that it can reveal
 * @param actions     what is asked, in order; one or more
 */
public record Step(String name, String instruction, Optional<Duration> takes, List<String> hazards, List<String> reveals,
        List<Action> actions) {
    public Step {
        hazards = List.copyOf(hazards);
        reveals = List.copyOf(reveals);
        actions = List.copyOf(actions);
        if (actions.isEmpty()) {
            throw new IllegalArgumentException("step " + name + " asks nothing");
        }
    }
}
