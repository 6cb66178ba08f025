package org.benchwright.ledger;

/** Somebody or something that holds an Ed25519 key. */
public interface Signer {

    /** The public half of the key. */
    SignerKey key();

    /** The Ed25519 signature (RFC 8032, 64 bytes) over {@code statement}. */
    byte[] sign(byte[] statement);
}
