package org.benchwright.ledger;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.CanonicalJson;

/** Values that standards and public logs have printed, reckoned again by this installed copy on this machine. */
public final class PublishedValues {

    private static final HexFormat HEX = HexFormat.of();
    /** X.509 form of an Ed25519 key up to the key's own bytes. */
    private static final String KEY_HEAD = "302a300506032b6570032100";

    private PublishedValues() {
    }

    /**
     * A published value.
     *
     * @param name  what it is
     * @param holds whether this copy comes to it
     */
    public record Checked(String name, boolean holds) {
    }

    /** All of them. */
    public static List<Checked> check() {
        return List.of(new Checked("SHA-256 of \"abc\" (FIPS 180-4)", digest()),
                new Checked("Ed25519, test 2, and one bit of it changed (RFC 8032, 7.1)", signature()),
                new Checked("canonical JSON, order of names (RFC 8785, 3.2.3)", canonical()),
                new Checked("tree of 8 leaves: root (vectors of the public transparency logs)", root()),
                new Checked("tree of 8 leaves: inclusion of the first (the same)", inclusion()),
                new Checked("tree of 8 leaves: consistency with the first 6 (the same)", consistency()));
    }

    private static boolean digest() {
        return Digest.of("abc".getBytes(StandardCharsets.US_ASCII)).hex()
                .equals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    private static boolean signature() {
        byte[] key = HEX.parseHex(KEY_HEAD + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");
        byte[] signature = HEX.parseHex("92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
                + "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");
        return SignerKey.decode(key)
                .filter(known -> known.verifies(new byte[] {0x72}, signature) && !known.verifies(new byte[] {0x73}, signature)).isPresent();
    }

    private static boolean canonical() {
        // Of the seven names of the printed example, those that Unicode NFC leaves as they are.
        String given = "{\"\\u20ac\":\"a\",\"\\r\":\"b\",\"1\":\"c\",\"\\ud83d\\ude00\":\"d\",\"\\u0080\":\"e\",\"\\u00f6\":\"f\"}";
        String wanted = "{\"\\r\":\"b\",\"1\":\"c\",\"\u0080\":\"e\",\"\u00f6\":\"f\",\"\u20ac\":\"a\",\"\ud83d\ude00\":\"d\"}";
        try {
            return CanonicalJson.text(CanonicalJson.parse(given)).equals(wanted);
        } catch (PayloadException refused) {
            return false;
        }
    }

    private static List<Digest> leaves() {
        return Stream.of("", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f")
                .map(leaf -> MerkleTree.leafHash(HEX.parseHex(leaf))).toList();
    }

    private static boolean root() {
        return MerkleTree.root(leaves()).hex().equals("5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328");
    }

    private static boolean inclusion() {
        return MerkleTree.inclusionProof(0, leaves()).stream().map(Digest::hex).toList()
                .equals(List.of("96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
                        "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                        "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4"));
    }

    private static boolean consistency() {
        return MerkleTree.consistencyProof(6, leaves()).stream().map(Digest::hex).toList()
                .equals(List.of("0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
                        "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                        "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"));
    }
}
