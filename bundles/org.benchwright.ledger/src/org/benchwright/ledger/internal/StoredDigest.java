package org.benchwright.ledger.internal;

import org.benchwright.core.Digest;
import org.benchwright.ledger.LedgerDamagedException;

/** A digest as the tables hold it: its bytes. */
final class StoredDigest {

    private StoredDigest() {
    }

    /**
     * The digest of those bytes.
     *
     * @param stored what a column holds, null where it holds nothing
     * @param place  where the ledger is, for the message
     * @throws LedgerDamagedException if they are none
     */
    static Digest of(byte[] stored, String place) throws LedgerDamagedException {
        if (stored == null || stored.length != Digest.LENGTH) {
            throw new LedgerDamagedException(Messages.text("damaged", place));
        }
        return Digest.ofResult(stored);
    }
}
