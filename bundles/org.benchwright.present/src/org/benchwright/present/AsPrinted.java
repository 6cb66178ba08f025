package org.benchwright.present;

import org.benchwright.core.PrintedText;
import org.benchwright.engine.plan.Plan;
import org.benchwright.present.internal.printed.PlanText;

/**
 * A procedure as the technician will read it, from its first hazard to its last outcome: in the words of the step card, with every shared
 * stage, parameter and inherited outcome as it will be carried out.
 */
public final class AsPrinted {

    private AsPrinted() {
    }

    /**
     * The whole procedure.
     *
     * @param plan the compiled procedure
     * @return the text; its parts are about {@code family}, {@code hazard.NAME}, {@code instrument.NAME}, {@code precondition.NAME},
     *         {@code stage.NAME} (soaks and make safe are stages too) and {@code step.NAME}
     */
    public static PrintedText of(Plan plan) {
        return PlanText.of(plan);
    }
}
