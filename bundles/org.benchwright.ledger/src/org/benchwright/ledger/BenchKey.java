package org.benchwright.ledger;

import java.security.GeneralSecurityException;
import java.security.PrivateKey;
import java.security.Signature;
import java.util.Objects;

/** The key of a bench: it signs "recorded on this bench" until people have keys of their own. */
public final class BenchKey implements Signer {

    private final PrivateKey secret;
    private final SignerKey key;

    /** The two halves of one key. */
    public BenchKey(PrivateKey secret, SignerKey key) {
        this.secret = Objects.requireNonNull(secret);
        this.key = Objects.requireNonNull(key);
    }

    @Override
    public SignerKey key() {
        return key;
    }

    @Override
    public byte[] sign(byte[] statement) {
        try {
            Signature signer = Signature.getInstance("Ed25519");
            signer.initSign(secret);
            signer.update(statement);
            return signer.sign();
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException("this Java has no Ed25519", impossible);
        }
    }
}
