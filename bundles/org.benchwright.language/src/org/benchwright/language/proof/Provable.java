package org.benchwright.language.proof;

import java.util.Map;
import java.util.concurrent.CancellationException;

import org.benchwright.core.Cancellation;
import org.benchwright.engine.plan.Plan;
import org.benchwright.language.editing.Passage;

/**
 * A procedure that is ready to be proved.
 *
 * @param plan     its plan
 * @param passages where its parts stand, as in {@link org.benchwright.language.editing.Compiled}; may be empty
 */
public record Provable(Plan plan, Map<String, Passage> passages) {
    public Provable {
        passages = Map.copyOf(passages);
    }

    /**
     * Reckons what it proves. Needs no lock, and any thread will do.
     *
     * @param cancellation stops the work
     * @throws CancellationException if cancelled
     */
    public ProcedureProof prove(Cancellation cancellation) {
        return new Proving().prove(this, cancellation);
    }
}
