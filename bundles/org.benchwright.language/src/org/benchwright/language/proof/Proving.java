package org.benchwright.language.proof;

import java.util.concurrent.CancellationException;

import org.benchwright.core.Cancellation;
import org.benchwright.language.internal.proof.Reckoning;
import org.benchwright.language.internal.proof.RiskMemory;

/** Proves procedures again and again, as their text changes: what is as it was isn't reckoned again. Any thread, several at a time. */
public final class Proving {

    private final RiskMemory memory = new RiskMemory();

    /**
     * Reckons what a procedure proves.
     *
     * @param cancellation stops the work
     * @throws CancellationException if cancelled
     */
    public ProcedureProof prove(Provable provable, Cancellation cancellation) {
        return Reckoning.of(provable, memory, cancellation);
    }
}
