package org.benchwright.report.tests;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.SignerKey;

/** The key of RFC 8032, 7.1, test 1: known to everybody, so that what is signed with it is the same each time. */
final class FixedKey {

    private static final String SECRET = "302e020100300506032b6570042204209d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60";
    private static final String PUBLIC = "302a300506032b6570032100d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a";

    private FixedKey() {
    }

    static BenchKey key() throws GeneralSecurityException {
        KeyFactory factory = KeyFactory.getInstance("Ed25519");
        return new BenchKey(factory.generatePrivate(new PKCS8EncodedKeySpec(HexFormat.of().parseHex(SECRET))),
                SignerKey.of(factory.generatePublic(new X509EncodedKeySpec(HexFormat.of().parseHex(PUBLIC)))));
    }
}
