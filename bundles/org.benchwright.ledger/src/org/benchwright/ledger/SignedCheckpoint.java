package org.benchwright.ledger;

import java.util.Objects;
import org.benchwright.ledger.internal.ProofCodec;
import org.benchwright.ledger.internal.Statements;

/**
 * A checkpoint with the key that signed it: all that somebody outside has to keep in order to notice later that the ledger's history was
 * changed. As a text it is a JSON file of less than a kilobyte.
 *
 * @param checkpoint what was said of the ledger
 * @param key        the public key that said it; compare its fingerprint with a note kept elsewhere
 */
public record SignedCheckpoint(Checkpoint checkpoint, SignerKey key) {

    public SignedCheckpoint {
        Objects.requireNonNull(checkpoint);
        Objects.requireNonNull(key);
    }

    /** Whether the key has signed exactly this. */
    public boolean holds() {
        return key.fingerprint().equals(checkpoint.fingerprint()) && key.verifies(statement(), checkpoint.signature());
    }

    private byte[] statement() {
        return Statements.checkpoint(checkpoint.number(), checkpoint.size(), checkpoint.root(), checkpoint.documents(),
                checkpoint.documentsLink(), checkpoint.instant(), checkpoint.fingerprint());
    }

    /** The file's text. */
    public String text() {
        return ProofCodec.text(this);
    }

    /**
     * Reads a file's text. Whether what it says is true is for {@link #holds}.
     *
     * @throws ProofFormatException when it is no checkpoint file
     */
    public static SignedCheckpoint read(String text) throws ProofFormatException {
        return ProofCodec.checkpoint(text);
    }
}
