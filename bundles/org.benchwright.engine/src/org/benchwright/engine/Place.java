package org.benchwright.engine;

import org.benchwright.engine.plan.Stage;
import org.benchwright.engine.plan.Step;

/**
 * Where in the plan a test is.
 *
 * @param stage      the stage
 * @param step       the step
 * @param makingSafe true within make safe
 */
public record Place(Stage stage, Step step, boolean makingSafe) {

    /** A stable key for something in the step, such as {@code lamps.pwr}. */
    public String key(String id) {
        return step.name() + "." + id;
    }
}
