package org.benchwright.ledger;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalLong;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Messages;

/** Proofs about one ledger for people who don't have it. Each is checked before it is handed out. */
public final class LedgerProofs {

    private final Ledger ledger;

    /** @param ledger what is proved about; stays open */
    public LedgerProofs(Ledger ledger) {
        this.ledger = ledger;
    }

    /**
     * The newest checkpoint with its key.
     *
     * @throws NoProofException when there is none yet, since nothing was signed
     */
    public SignedCheckpoint latest() throws LedgerException {
        List<Checkpoint> all = ledger.checkpoints();
        if (all.isEmpty()) {
            throw new NoProofException(Messages.text("proof.noCheckpoint"));
        }
        Checkpoint newest = all.get(all.size() - 1);
        for (KnownSigner signer : ledger.signers()) {
            SignedCheckpoint signed = new SignedCheckpoint(newest, signer.key());
            if (signed.holds()) {
                return signed;
            }
        }
        throw new LedgerDamagedException(Messages.text("proof.checkpointFalse", newest.number()));
    }

    /**
     * Proves that an event of a test is under the newest checkpoint.
     *
     * @param sequence   number of the event; empty: the last one that the checkpoint tells of
     * @param withEarlier whether to put all earlier events of the test into the proof
     * @throws NoProofException       when there is no such event or no checkpoint tells of it yet
     * @throws LedgerDamagedException when what the ledger holds does not lead to its checkpoint
     */
    public InclusionProof inclusion(TestId test, OptionalLong sequence, boolean withEarlier) throws LedgerException {
        return inclusion(test, sequence, withEarlier, latest());
    }

    /** As {@link #inclusion(TestId, OptionalLong, boolean)}, under one of the ledger's checkpoints. */
    InclusionProof inclusion(TestId test, OptionalLong sequence, boolean withEarlier, SignedCheckpoint checkpoint) throws LedgerException {
        List<LedgerEntry> covered = ledger.entries(test).stream().filter(entry -> entry.position() <= checkpoint.checkpoint().size())
                .toList();
        long wanted = sequence.orElse(covered.size());
        if (wanted < 1 || wanted > covered.size()) {
            throw new NoProofException(Messages.text("proof.notCovered", test, wanted, checkpoint.checkpoint().number()));
        }
        LedgerEntry entry = covered.get((int) wanted - 1);
        Link previous = wanted == 1 ? Link.before(test) : covered.get((int) wanted - 2).link();
        List<String> earlier = withEarlier ? covered.subList(0, (int) wanted - 1).stream().map(LedgerProofs::text).toList() : List.of();
        List<Digest> path = ledger.inclusionPath(entry.position(), checkpoint.checkpoint().size());
        InclusionProof proof = new InclusionProof(test, wanted, entry.position(), previous, text(entry), earlier, path, checkpoint);
        if (!proof.holds()) {
            throw new LedgerDamagedException(Messages.text("proof.false", checkpoint.checkpoint().number()));
        }
        return proof;
    }

    /**
     * Proves that an older checkpoint's events are the beginning of those of the newest.
     *
     * @throws NoProofException when they are not: that is what a kept checkpoint is for
     */
    public ConsistencyProof consistency(SignedCheckpoint older) throws LedgerException {
        SignedCheckpoint newest = latest();
        long size = newest.checkpoint().size();
        if (!older.holds()) {
            throw new NoProofException(Messages.text("proof.keptFalse"));
        }
        if (older.checkpoint().size() > size) {
            throw new NoProofException(Messages.text("proof.older", older.checkpoint().size(), size));
        }
        ConsistencyProof proof = new ConsistencyProof(older, newest, ledger.consistencyPath(older.checkpoint().size(), size));
        if (!proof.holds()) {
            throw new NoProofException(Messages.text("proof.inconsistent", older.checkpoint().size()));
        }
        return proof;
    }

    private static String text(LedgerEntry entry) {
        return new String(entry.canonical(), StandardCharsets.UTF_8);
    }
}
