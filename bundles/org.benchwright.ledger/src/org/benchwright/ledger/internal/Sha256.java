package org.benchwright.ledger.internal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import org.benchwright.core.Digest;

/** SHA-256 (FIPS 180-4) over several pieces as if they were one. */
public final class Sha256 {

    /** Never fed: asking for a new one takes longer than hashing a link does, copying this one does not. */
    private static final MessageDigest FRESH = fresh();

    private Sha256() {
    }

    /** Digest of the pieces one after the other. */
    public static Digest of(byte[]... pieces) {
        MessageDigest sha = start();
        for (byte[] piece : pieces) {
            sha.update(piece);
        }
        return Digest.ofResult(sha.digest());
    }

    /** A computation that takes its pieces one by one. */
    public static MessageDigest start() {
        try {
            return (MessageDigest) FRESH.clone();
        } catch (CloneNotSupportedException other) {
            // Some other provider's, which can't be copied.
            return fresh();
        }
    }

    private static MessageDigest fresh() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java has SHA-256", missing);
        }
    }
}
