package org.benchwright.core.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

import org.benchwright.core.Digest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DigestTest {

    private static final String OF_ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    /** The examples of FIPS 180-4. */
    @ParameterizedTest
    @CsvSource({
        "'', 1, e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "abc, 1, " + OF_ABC,
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq, 1, "
                + "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        "a, 1000000, cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0" })
    void reproducesFips180(String text, int times, String expected) throws IOException {
        byte[] content = text.repeat(times).getBytes(StandardCharsets.US_ASCII);
        assertEquals(expected, Digest.of(content).hex());
        assertEquals(expected, Digest.of(new ByteArrayInputStream(content)).hex());
    }

    @Test
    void isAValue() {
        Digest digest = Digest.of("abc".getBytes(StandardCharsets.US_ASCII));
        assertEquals(digest, Digest.parse(OF_ABC));
        assertEquals(digest.hashCode(), Digest.parse(OF_ABC).hashCode());
        assertEquals(digest, Digest.ofResult(digest.bytes()));
        byte[] mine = digest.bytes();
        mine[0] ^= 1;
        assertEquals(OF_ABC, digest.hex());
        assertArrayEquals(Digest.parse(OF_ABC).bytes(), digest.bytes());
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "ba7816bf", "BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD",
        "xa7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad0" })
    void hasOneSpellingOnly(String hex) {
        String words = assertThrows(IllegalArgumentException.class, () -> Digest.parse(hex)).getMessage();
        assertTrue(words.contains("64 hexadecimal digits"), words);
    }

    @Test
    void refusesResultsOfAnotherLength() {
        assertThrows(IllegalArgumentException.class, () -> Digest.ofResult(new byte[31]));
    }
}
