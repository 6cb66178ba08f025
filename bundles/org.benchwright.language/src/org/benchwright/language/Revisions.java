package org.benchwright.language;

import java.util.List;

import org.benchwright.engine.plan.Plan;
import org.benchwright.language.internal.difference.PlanDifferences;

/** Two revisions of a procedure, compared by what they mean; how they are written makes no difference. */
public final class Revisions {

    private Revisions() {
    }

    /**
     * What has changed.
     *
     * @param before the plan of the older revision
     * @param after  the plan of the newer one
     * @return sentences such as {@code bench, volts, limits: upper limit 24.5 V became 24.3 V}; empty if both mean the same
     */
    public static List<String> differences(Plan before, Plan after) {
        return PlanDifferences.between(before, after);
    }
}
