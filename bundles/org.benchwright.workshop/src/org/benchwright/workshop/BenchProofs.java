package org.benchwright.workshop;

import java.util.Optional;
import java.util.OptionalLong;

import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerProofs;
import org.benchwright.ledger.NoProofException;
import org.benchwright.ledger.ProofFormatException;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.TestId;
import org.benchwright.workshop.internal.LedgerWork;

/** What can be shown of a bench's ledger to people who don't have it: the texts of small files. */
public final class BenchProofs {

    private final Ledger ledger;

    BenchProofs(Ledger ledger) {
        this.ledger = ledger;
    }

    /**
     * The newest checkpoint: whoever keeps it can show later that nothing before it was changed.
     *
     * @throws RefusedException if nothing was signed yet
     * @throws StoreException   if the ledger can't be read
     */
    public String checkpoint() throws RefusedException, StoreException {
        return asked(proofs -> proofs.latest().text());
    }

    /**
     * A proof that a test stands in the ledger under its newest checkpoint; empty if there is no such test.
     *
     * @param event      number of the event to prove, with all before it; empty: the last that the checkpoint tells of
     * @param withEvents whether to put the earlier events into the file
     * @throws RefusedException if the checkpoint does not tell of it yet
     * @throws StoreException   if the ledger can't be read, or does not lead to its own checkpoint
     */
    public Optional<String> inclusion(String test, OptionalLong event, boolean withEvents) throws RefusedException, StoreException {
        Optional<TestId> id = TestId.parse(test);
        if (id.isEmpty() || asked(proofs -> ledger.lastSequence(id.get())) == 0) {
            return Optional.empty();
        }
        return Optional.of(asked(proofs -> proofs.inclusion(id.get(), event, withEvents).text()));
    }

    /**
     * A proof that what a kept checkpoint tells of is the beginning of what the newest tells of.
     *
     * @param kept text of the kept checkpoint
     * @throws RefusedException if the text is no checkpoint, or the ledger does not agree with it
     * @throws StoreException   if the ledger can't be read
     */
    public String consistency(String kept) throws RefusedException, StoreException {
        return asked(proofs -> proofs.consistency(SignedCheckpoint.read(kept)).text());
    }

    private interface Asking<T> {
        T of(LedgerProofs proofs) throws LedgerException;
    }

    private <T> T asked(Asking<T> asking) throws RefusedException, StoreException {
        try {
            return asking.of(new LedgerProofs(ledger));
        } catch (NoProofException | ProofFormatException refused) {
            throw new RefusedException(refused.getMessage());
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }
}
