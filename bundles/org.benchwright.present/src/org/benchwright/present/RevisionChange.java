package org.benchwright.present;

import java.util.List;
import java.util.Objects;

import org.benchwright.engine.plan.Plan;

/**
 * What a revision changes, by meaning: what somebody reads before approving it.
 *
 * @param words       against which revision, or that there is none yet
 * @param differences one sentence each; a sentence that says so where both mean the same, none where there is nothing to compare with
 */
public record RevisionChange(String words, List<String> differences) {

    public RevisionChange {
        Objects.requireNonNull(words);
        differences = List.copyOf(differences);
    }

    /** Tells in sentences what one plan means that another does not. The language knows; here it is only asked. */
    @FunctionalInterface
    public interface Comparison {

        /** What has changed; none if both mean the same. */
        List<String> differences(Plan before, Plan after);
    }
}
