package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.spec.EdECPrivateKeySpec;
import java.security.spec.InvalidKeySpecException;
import java.security.spec.NamedParameterSpec;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.benchwright.core.Digest;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.PublishedValues;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.Sha256;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The building blocks against published vectors; the source stands beside each. */
class PublishedVectorsTest {

    private static final HexFormat HEX = HexFormat.of();
    private static final String FRENCH = """
            {
              "peach": "This sorting order",
              "p\u00e9ch\u00e9": "is wrong according to French",
              "p\u00eache": "but canonicalization MUST",
              "sin":   "ignore locale"
            }""";
    private static final String FRENCH_CANONICAL = "{\"peach\":\"This sorting order\",\"p\u00e9ch\u00e9\":\"is wrong according to French\","
            + "\"p\u00eache\":\"but canonicalization MUST\",\"sin\":\"ignore locale\"}";
    private static final String FRENCH_DIGEST = "d99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5";

    /** FIPS 180-4, examples for SHA-256 (NIST). */
    @ParameterizedTest
    @CsvSource({"'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq, 248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"})
    void sha256(String message, String digest) {
        byte[] bytes = message.getBytes(StandardCharsets.US_ASCII);
        assertEquals(digest, Sha256.of(bytes).hex());
        assertEquals(digest, Digest.of(bytes).hex());
    }

    /** FIPS 180-4, one million times "a". */
    @Test
    void sha256OfMany() {
        byte[] half = "a".repeat(500_000).getBytes(StandardCharsets.US_ASCII);
        assertEquals("cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0", Sha256.of(half, half).hex());
    }

    /** RFC 8032 section 7.1, TEST 1, 2, 3 and SHA(abc): seed, message, public key, signature. */
    @ParameterizedTest
    @CsvSource({
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60, '', "
            + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a, "
            + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
            + "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb, 72, "
            + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c, "
            + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
            + "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7, af82, "
            + "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025, "
            + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
            + "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a",
        "833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42, "
            + "ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a"
            + "2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f, "
            + "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf, "
            + "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b589"
            + "09351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704"})
    void ed25519(String seed, String message, String publicKey, String signature) throws GeneralSecurityException {
        SignerKey key = SignerKey.decode(HEX.parseHex("302a300506032b6570032100" + publicKey)).orElseThrow();
        BenchKey bench = new BenchKey(secret(HEX.parseHex(seed)), key);
        byte[] said = HEX.parseHex(message);
        byte[] signed = bench.sign(said);
        assertArrayEquals(HEX.parseHex(signature), signed);
        assertTrue(key.verifies(said, signed));
        for (int bit = 0; bit < signed.length * 8; bit++) {
            byte[] changed = signed.clone();
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            assertFalse(key.verifies(said, changed), "bit " + bit + " of the signature");
        }
        for (int bit = 0; bit < said.length * 8; bit++) {
            byte[] changed = said.clone();
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            assertFalse(key.verifies(changed, signed), "bit " + bit + " of the message");
        }
        assertFalse(key.verifies(said, Arrays.copyOf(signed, 63)));
        assertFalse(key.verifies(said, Arrays.copyOf(signed, 65)));
        assertFalse(key.verifies(said, plusOrder(signed)), "RFC 8032, 5.1.7: S is below the order of the group");
    }

    /** The signature with the order of the group (RFC 8032, 5.1: L = 2^252 + 277...493) added to S, little endian. */
    private static byte[] plusOrder(byte[] signed) {
        BigInteger order = BigInteger.TWO.pow(252).add(new BigInteger("27742317777372353535851937790883648493"));
        byte[] scalar = new byte[32];
        for (int i = 0; i < 32; i++) {
            scalar[i] = signed[63 - i];
        }
        BigInteger sum = new BigInteger(1, scalar).add(order);
        byte[] other = signed.clone();
        for (int i = 0; i < 32; i++) {
            other[32 + i] = sum.shiftRight(8 * i).byteValue();
        }
        return other;
    }

    /** RFC 8032 section 5.1.5: a seed has 32 bytes. */
    @Test
    void ed25519RefusesAShortSeed() {
        assertThrows(InvalidKeySpecException.class, () -> secret(new byte[31]));
    }

    private static PrivateKey secret(byte[] seed) throws GeneralSecurityException {
        return KeyFactory.getInstance("Ed25519").generatePrivate(new EdECPrivateKeySpec(NamedParameterSpec.ED25519, seed));
    }

    /**
     * Test data that accompany RFC 8785 (files arrays, french, values, unicode): canonical text and the digest of its bytes. Ours takes
     * no numbers, so it is a library that comes to these; {@link CanonicalReaderTest} compares ours with it.
     */
    @Test
    void theLibraryThatJudgesOursWritesCanonicalJson() throws IOException {
        assertCanonical("[ 56, { \"d\": true, \"10\": null, \"1\": [ ] } ]", "[56,{\"1\":[],\"10\":null,\"d\":true}]",
                "099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42");
        assertCanonical(FRENCH, FRENCH_CANONICAL, FRENCH_DIGEST);
        assertCanonical("""
                {
                  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
                  "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
                  "literals": [null, true, false]
                }""", "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
                        + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
                "2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb");
        assertCanonical("{ \"Unnormalized Unicode\" : \"A\\u030a\" }", "{\"Unnormalized Unicode\":\"A\u030a\"}",
                "0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3");
    }

    /** The one file of those without numbers and with nothing that Unicode NFC would change. */
    @Test
    void oursWritesCanonicalJson() throws PayloadException {
        byte[] canonical = CanonicalJson.bytes(CanonicalJson.parse(FRENCH));
        assertEquals(FRENCH_CANONICAL, new String(canonical, StandardCharsets.UTF_8));
        assertEquals(FRENCH_DIGEST, Sha256.of(canonical).hex());
    }

    /** What an installed copy looks at by itself. */
    @Test
    void everyValueOfTheSelfCheckHolds() {
        List<PublishedValues.Checked> checked = PublishedValues.check();
        assertEquals(6, checked.size());
        assertEquals(List.of(), checked.stream().filter(each -> !each.holds()).map(PublishedValues.Checked::name).toList());
    }

    private static void assertCanonical(String text, String canonical, String digest) throws IOException {
        JsonCanonicalizer canonicalizer = new JsonCanonicalizer(text);
        assertEquals(canonical, canonicalizer.getEncodedString());
        assertEquals(digest, Sha256.of(canonicalizer.getEncodedUTF8()).hex());
    }

    /** RFC 8785, Appendix B: IEEE 754 bits and their text. The ledger itself keeps no numbers; the library that judges it must be right. */
    @ParameterizedTest
    @CsvSource({"0000000000000000, 0", "8000000000000000, 0", "0000000000000001, 5e-324", "8000000000000001, -5e-324",
        "7fefffffffffffff, 1.7976931348623157e+308", "ffefffffffffffff, -1.7976931348623157e+308", "4340000000000000, 9007199254740992",
        "c340000000000000, -9007199254740992", "4430000000000000, 295147905179352830000", "44b52d02c7e14af5, 9.999999999999997e+22",
        "44b52d02c7e14af6, 1e+23", "44b52d02c7e14af7, 1.0000000000000001e+23", "444b1ae4d6e2ef4e, 999999999999999700000",
        "444b1ae4d6e2ef4f, 999999999999999900000", "444b1ae4d6e2ef50, 1e+21", "3eb0c6f7a0b5ed8c, 9.999999999999997e-7",
        "3eb0c6f7a0b5ed8d, 0.000001", "becbf647612f3696, -0.0000033333333333333333", "43143ff3c1cb0959, 1424953923781206.2",
        "41b3de4355555555, 333333333.3333333"})
    void canonicalNumbers(String bits, String text) throws IOException {
        double value = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
        assertEquals("[" + text + "]", new JsonCanonicalizer("[" + new BigDecimal(value) + "]").getEncodedString());
    }

    /** RFC 8785, Appendix B: NaN and Infinity have no JSON. */
    @ParameterizedTest
    @CsvSource({"NaN", "Infinity", "1e999"})
    void numbersWithoutJsonAreRefused(String number) {
        assertThrows(IOException.class, () -> new JsonCanonicalizer("[" + number + "]").getEncodedString());
    }
}
