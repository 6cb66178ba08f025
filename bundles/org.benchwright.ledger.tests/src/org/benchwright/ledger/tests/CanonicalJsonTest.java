package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.internal.CanonicalJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CanonicalJsonTest {

    @Test
    void sortsNamesAndKeepsTheLastDigitOfAQuantity() throws PayloadException {
        assertEquals("{\"a\":[true,null,{}],\"z\":\"23.90\"}", CanonicalJson.text(CanonicalJson.parse("""
                { "z" : "23.90", "a" : [ true , null , { } ] }""")));
    }

    @Test
    void bringsTextsAndNamesToOneForm() throws PayloadException {
        assertEquals("{\"\u00fc\":\"\u00c5\"}", CanonicalJson.text(CanonicalJson.parse("{\"u\\u0308\":\"A\\u030a\"}")));
    }

    @Test
    void keepsCharactersBeyondTheFirstPlane() throws PayloadException {
        assertEquals("{\"a\":\"\ud83d\udd0c\"}", CanonicalJson.text(CanonicalJson.parse("{\"a\":\"\\ud83d\\udd0c\"}")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[]", "\"text\"", "null", "{", "{}{}", "{}x", "{\"a\":1}", "{\"a\":[0.5]}", "{\"a\":NaN}", "{'a':''}",
        "{\"a\":\"b\",}", "{\"a\":\"b\",\"a\":\"c\"}", "{\"\u00fc\":\"\",\"u\u0308\":\"\"}", "{\"a\":\"\\ud83d\"}", "{\"a\":\"\\udd0c\\ud83d\"}",
        "{\"\\ud83d\":\"\"}", "{\"a\":\"\\x\"}", "{\"a\":\"line\nfeed\"}", "/* */{}", "\ufeff{}"})
    void refusesWhatWouldNotSurvive(String text) {
        assertThrows(PayloadException.class, () -> CanonicalJson.parse(text));
    }

    @Test
    void saysWhichNumberItRefuses() {
        PayloadException refused = assertThrows(PayloadException.class, () -> CanonicalJson.parse("{\"volts\":23.90}"));
        assertTrue(refused.getMessage().contains("23.90"), refused.getMessage());
    }

    @Test
    void refusesNestingThatWouldUseUpTheStack() {
        int levels = 100_000;
        String text = "{\"a\":" + "[".repeat(levels) + "]".repeat(levels) + "}";
        assertThrows(PayloadException.class, () -> CanonicalJson.parse(text));
    }

    @Test
    void refusesBytesThatAreNoUtf8() {
        byte[] bytes = "{\"a\":\"?\"}".getBytes(StandardCharsets.US_ASCII);
        bytes[6] = (byte) 0xC3;
        assertThrows(PayloadException.class, () -> CanonicalJson.parse(bytes));
    }
}
