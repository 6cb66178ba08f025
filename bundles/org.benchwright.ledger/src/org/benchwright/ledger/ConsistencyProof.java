package org.benchwright.ledger;

import java.util.List;
import java.util.Objects;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.ProofCodec;

/**
 * Shows to somebody without the ledger that what an older checkpoint tells of is still there, unchanged and in its old order, under a
 * newer one.
 *
 * @param older the older checkpoint
 * @param newer the newer one
 * @param path  the hashes that lead from both roots to each other
 */
public record ConsistencyProof(SignedCheckpoint older, SignedCheckpoint newer, List<Digest> path) {

    public ConsistencyProof {
        Objects.requireNonNull(older);
        Objects.requireNonNull(newer);
        path = List.copyOf(path);
    }

    /** Whether both checkpoints hold and the older one's events are the beginning of the newer one's. */
    public boolean holds() {
        return older.holds() && newer.holds() && older.checkpoint().number() <= newer.checkpoint().number()
                && MerkleTree.consistent(older.checkpoint().size(), newer.checkpoint().size(), path, older.checkpoint().root(),
                        newer.checkpoint().root());
    }

    /** The file's text. */
    public String text() {
        return ProofCodec.text(this);
    }

    /**
     * Reads a file's text. Whether what it says is true is for {@link #holds}.
     *
     * @throws ProofFormatException when it is no consistency proof
     */
    public static ConsistencyProof read(String text) throws ProofFormatException {
        return ProofCodec.consistency(text);
    }
}
