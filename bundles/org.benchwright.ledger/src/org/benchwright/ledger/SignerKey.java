package org.benchwright.ledger;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.SignatureException;
import java.security.interfaces.EdECPublicKey;
import java.security.spec.NamedParameterSpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.Sha256;

/** The public half of an Ed25519 key, in its X.509 form. Two are equal when their bytes are. */
public final class SignerKey {

    private static final String ALGORITHM = "Ed25519";

    private static final int SIGNATURE_BYTES = 64;

    private final byte[] encoded;
    private final PublicKey key;
    private final Digest fingerprint;

    private SignerKey(byte[] encoded, PublicKey key) {
        this.encoded = encoded;
        this.key = key;
        this.fingerprint = Sha256.of(encoded);
    }

    /** The key in those bytes; empty when they are not the X.509 form of an Ed25519 public key. */
    public static Optional<SignerKey> decode(byte[] encoded) {
        try {
            PublicKey key = KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(encoded));
            boolean plain = key instanceof EdECPublicKey edwards
                    && NamedParameterSpec.ED25519.getName().equals(edwards.getParams().getName())
                    && Arrays.equals(key.getEncoded(), encoded);
            return plain ? Optional.of(new SignerKey(encoded.clone(), key)) : Optional.empty();
        } catch (GeneralSecurityException notAKey) {
            return Optional.empty();
        }
    }

    /**
     * @throws IllegalArgumentException when it is not an Ed25519 key
     */
    public static SignerKey of(PublicKey key) {
        return decode(key.getEncoded()).orElseThrow(() -> new IllegalArgumentException("not an Ed25519 key"));
    }

    /** The X.509 form. */
    public byte[] encoded() {
        return encoded.clone();
    }

    /** SHA-256 of the X.509 form: what people compare. */
    public Digest fingerprint() {
        return fingerprint;
    }

    /** Whether {@code signature} is this key's over {@code statement}; any malformed signature is simply not. */
    public boolean verifies(byte[] statement, byte[] signature) {
        if (signature.length != SIGNATURE_BYTES) {
            // The platform's own check lets bytes behind the signature pass.
            return false;
        }
        try {
            Signature verifier = Signature.getInstance(ALGORITHM);
            verifier.initVerify(key);
            verifier.update(statement);
            return verifier.verify(signature);
        } catch (SignatureException malformed) {
            return false;
        } catch (GeneralSecurityException missing) {
            throw new IllegalStateException("this Java has no Ed25519", missing);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SignerKey that && Arrays.equals(encoded, that.encoded);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(encoded);
    }

    @Override
    public String toString() {
        return fingerprint().hex();
    }
}
