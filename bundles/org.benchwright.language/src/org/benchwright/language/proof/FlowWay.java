package org.benchwright.language.proof;

import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;

import org.benchwright.language.internal.proof.FlowWords;

/**
 * A way from one place to the next; what leads there for the same kind of reason, and as often, is one way.
 *
 * @param from    the number of the place that it leaves
 * @param to      the number of the place that it leads to
 * @param kind    what leads there
 * @param reasons which checks, events or answers do so, in the order of the step; empty where all is done
 * @param atMost  how often it can be taken, where that is bounded for each reason
 */
public record FlowWay(int from, int to, Kind kind, List<String> reasons, OptionalInt atMost) {

    /** What leads there. */
    public enum Kind {
        /** All is done and conforms. */
        NEXT,
        /** The text says so there, whatever the checks came to. */
        AS_WRITTEN,
        /** A check does not conform. */
        FAILED,
        /** A check is undecided and no repeat is left. */
        UNDECIDED,
        /** A condition does not apply: the rest is passed over. */
        PASSED_OVER,
        /** The answer to a question. */
        BRANCH,
        /** A precondition is not met. */
        UNMET,
        /** The unit stopped during a soak. */
        STOPPED,
        /** The unit stopped while a condition around it was outside its limits. */
        STOPPED_OUTSIDE,
        /** A soak went unwitnessed for too long, or power was lost. */
        GAP,
        /** A soak lasted, but its hours are no evidence. */
        UNWITNESSED,
        /** Making safe follows, as on every end. */
        EVERY_END;

        /** Whether a test takes it when everything is as it should be. */
        public boolean isStraight() {
            return this == NEXT || this == AS_WRITTEN || this == EVERY_END;
        }
    }

    public FlowWay {
        Objects.requireNonNull(kind);
        reasons = List.copyOf(reasons);
    }

    /** A few words to write beside it; empty where its ends say enough. */
    public String label() {
        return FlowWords.label(this);
    }
}
