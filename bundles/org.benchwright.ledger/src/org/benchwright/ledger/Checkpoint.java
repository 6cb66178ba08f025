package org.benchwright.ledger;

import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import org.benchwright.core.Digest;

/**
 * A signed statement of what the ledger held at one time. Whoever keeps one elsewhere can show later that nothing before it was changed,
 * taken away or put in another order.
 *
 * @param number        from 1, without gaps
 * @param size          number of events in the ledger
 * @param root          root of the Merkle tree over them (RFC 9162)
 * @param documents     number of documents kept
 * @param documentsLink link of the last of them
 * @param instant       when it was made
 * @param fingerprint   of the key that signed
 * @param signature     over the statement of all the above; handed out as a copy
 */
public record Checkpoint(long number, long size, Digest root, long documents, Digest documentsLink, Instant instant, Digest fingerprint,
        byte[] signature) {

    public Checkpoint {
        Objects.requireNonNull(root);
        Objects.requireNonNull(documentsLink);
        Objects.requireNonNull(instant);
        Objects.requireNonNull(fingerprint);
        signature = signature.clone();
    }

    @Override
    public byte[] signature() {
        return signature.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Checkpoint that && number == that.number && size == that.size && root.equals(that.root)
                && documents == that.documents && documentsLink.equals(that.documentsLink) && instant.equals(that.instant)
                && fingerprint.equals(that.fingerprint) && Arrays.equals(signature, that.signature);
    }

    @Override
    public int hashCode() {
        return Objects.hash(number, size, root);
    }
}
