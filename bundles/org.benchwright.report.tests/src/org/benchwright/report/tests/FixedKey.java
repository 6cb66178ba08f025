package org.benchwright.report.tests;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SignerKey;

/** The key of RFC 8032, 7.1, test 1: known to everybody, so that what is signed with it is the same each time. */
final class FixedKey implements Signer {

    private static final String SECRET = "302e020100300506032b6570042204209d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60";
    private static final String PUBLIC = "302a300506032b6570032100d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a";

    private final PrivateKey secret;
    private final SignerKey key;

    FixedKey() throws GeneralSecurityException {
        KeyFactory factory = KeyFactory.getInstance("Ed25519");
        secret = factory.generatePrivate(new PKCS8EncodedKeySpec(HexFormat.of().parseHex(SECRET)));
        key = SignerKey.of(factory.generatePublic(new X509EncodedKeySpec(HexFormat.of().parseHex(PUBLIC))));
    }

    @Override
    public SignerKey key() {
        return key;
    }

    @Override
    public byte[] sign(byte[] statement) {
        try {
            Signature signature = Signature.getInstance("Ed25519");
            signature.initSign(secret);
            signature.update(statement);
            return signature.sign();
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
