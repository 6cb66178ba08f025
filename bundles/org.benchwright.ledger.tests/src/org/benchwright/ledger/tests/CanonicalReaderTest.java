package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.JsonValue;
import org.benchwright.ledger.internal.JsonValue.Flag;
import org.benchwright.ledger.internal.JsonValue.Items;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Nothing;
import org.benchwright.ledger.internal.JsonValue.Text;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Our writing and strict reading of canonical form, beside somebody else's canonicalizer and a general reader. */
class CanonicalReaderTest {

    private static final List<String> PIECES = List.of("a", "b", "Z", " ", "\"", "\\", "/", "\b", "\t", "\n", "\f", "\r", "\u0001", "\u001f",
            "\u007f", "\u00fc", "\u00c5", "\u2028", "\ud83d\udd0c", "\ufb33", "\u20ac", "</script>");

    @Test
    void writesWhatAnIndependentCanonicalizerWrites() throws Exception {
        Random random = new Random(8785);
        for (int i = 0; i < 2000; i++) {
            Members value = members(random, 3);
            byte[] ours = CanonicalJson.bytes(value);
            assertArrayEquals(new JsonCanonicalizer(CanonicalJson.indented(value)).getEncodedUTF8(), ours);
            assertEquals(value, CanonicalJson.parseCanonical(ours));
        }
    }

    /** A changed byte is taken exactly when it leads to another text that is canonical. */
    @Test
    void takesABrokenTextExactlyWhenItIsCanonicalAgain() {
        Random random = new Random(9162);
        int taken = 0;
        for (int i = 0; i < 20_000; i++) {
            byte[] bytes = broken(CanonicalJson.bytes(members(random, 2)), random);
            boolean canonical = canonical(bytes);
            assertEquals(canonical, strict(bytes), () -> new String(bytes, StandardCharsets.UTF_8));
            taken += canonical ? 1 : 0;
        }
        assertTrue(taken > 1000 && taken < 19_000, "both kinds must come up: " + taken);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "{}x", "{ }", "[]", "{\"a\":1}", "{\"a\" :\"\"}", "{\"b\":\"\",\"a\":\"\"}", "{\"a\":\"\",\"a\":\"\"}",
        "{\"a\":\"\",}",
        "{\"a\":\"\\/\"}", "{\"a\":\"\\u0041\"}", "{\"a\":\"\\u000a\"}", "{\"a\":\"\\u001F\"}", "{\"a\":\"\\u002\"}", "{\"a\":[true,]}",
        "{\"a\":tru}", "{\"a\":\"A\u030a\"}", "{\"a\":\"\t\"}", "{\"a\"", "{\"a\":\"\\", "\ufeff{}"})
    void refusesEveryOtherForm(String text) {
        assertThrows(PayloadException.class, () -> CanonicalJson.parseCanonical(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void nestsAsDeepAsTheGeneralReader() {
        for (int levels = CanonicalJson.DEPTH - 2; levels <= CanonicalJson.DEPTH + 1; levels++) {
            byte[] nested = ("{\"a\":" + "[".repeat(levels) + "]".repeat(levels) + "}").getBytes(StandardCharsets.UTF_8);
            assertEquals(canonical(nested), strict(nested), levels + " levels");
        }
        int levels = 100_000;
        assertThrows(PayloadException.class, () -> CanonicalJson.parseCanonical(
                ("{\"a\":" + "[".repeat(levels) + "]".repeat(levels) + "}").getBytes(StandardCharsets.UTF_8)));
    }

    private static boolean canonical(byte[] bytes) {
        try {
            return Arrays.equals(bytes, CanonicalJson.bytes(CanonicalJson.parse(bytes)));
        } catch (PayloadException refused) {
            return false;
        }
    }

    private static boolean strict(byte[] bytes) {
        try {
            CanonicalJson.parseCanonical(bytes);
            return true;
        } catch (PayloadException refused) {
            return false;
        }
    }

    private static byte[] broken(byte[] canonical, Random random) {
        byte[] bytes = canonical.clone();
        bytes[random.nextInt(bytes.length)] = (byte) (random.nextBoolean() ? random.nextInt(256) : "{}[],:\"\\ au0".charAt(random.nextInt(12)));
        return bytes;
    }

    private static Members members(Random random, int depth) {
        Map<String, JsonValue> values = new LinkedHashMap<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            values.put(text(random), value(random, depth));
        }
        return new Members(values);
    }

    private static JsonValue value(Random random, int depth) {
        return switch (random.nextInt(depth > 0 ? 6 : 4)) {
            case 0 -> new Flag(random.nextBoolean());
            case 1 -> new Nothing();
            case 4 -> members(random, depth - 1);
            case 5 -> {
                List<JsonValue> items = new ArrayList<>();
                for (int i = random.nextInt(4); i > 0; i--) {
                    items.add(value(random, depth - 1));
                }
                yield new Items(items);
            }
            default -> new Text(text(random));
        };
    }

    private static String text(Random random) {
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(6); i > 0; i--) {
            text.append(PIECES.get(random.nextInt(PIECES.size())));
        }
        try {
            return CanonicalJson.normalise(text.toString());
        } catch (PayloadException impossible) {
            throw new IllegalStateException("the pieces are whole characters", impossible);
        }
    }
}
