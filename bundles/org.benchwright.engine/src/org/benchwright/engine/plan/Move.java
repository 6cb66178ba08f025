package org.benchwright.engine.plan;

import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.core.Verdict;

/** Where a check that does not conform leads. Nothing goes on in silence. */
public sealed interface Move {

    /**
     * The test ends, after make safe.
     *
     * @param verdict what it comes to
     * @param reason  why; may be empty for accepted
     */
    record Conclude(Verdict verdict, String reason) implements Move {
    }

    /**
     * The test goes on elsewhere.
     *
     * @param stage the stage's name
     * @param step  the step's name; empty where the target is a soak
     * @param bound how often at most, and what comes instead; empty for a move forward, which needs none
     */
    record GoTo(String stage, String step, Optional<Bound> bound) implements Move {
    }

    /**
     * Goes on only if somebody of that role releases it.
     *
     * @param by        whose release it takes
     * @param statement what is released
     */
    record ReleaseBy(Role by, String statement) implements Move {
    }

    /**
     * The soak begins again from the start.
     *
     * @param bound how often at most, and what comes instead
     */
    record BeginAgain(Bound bound) implements Move {
    }

    /**
     * A limit to repeating.
     *
     * @param atMost  1 or more
     * @param instead what comes when that is used up
     */
    record Bound(int atMost, Move instead) {
    }
}
