package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchwright.ledger.BenchKey;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.MerkleTree;
import org.benchwright.ledger.TestId;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that somebody made to be taken for proofs, some with a key of his own, for whom any tree is true: what the program says of each, and what
 * the checker says that strangers have, is the same.
 */
class HostileProofTest {

    private static final TestId TEST = new TestId("T-22222-22222");
    /** With a mark that a lost half of a character would come out as, and a letter that can be written in two ways. */
    private static final String EVENT = "{\"note\":\"läuft?\",\"sequence\":\"1\",\"test\":\"T-22222-22222\"}";

    @TempDir
    Path folder;

    private BenchKey key;
    /** By what was done to it. */
    private final Map<String, String> files = new LinkedHashMap<>();
    private final List<String> holding = new ArrayList<>();

    @BeforeEach
    void make() throws Exception {
        key = BenchKeyStore.openOrCreate(folder);
    }

    private static String json(String... members) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < members.length; i += 2) {
            String value = members[i + 1];
            said.add("\"" + members[i] + "\":" + (value.matches("(?s)[{\\[](?!\\\\).*") ? value : "\"" + value + "\""));
        }
        return "{" + String.join(",", said) + "}";
    }

    private String statement(String size, String root, String documents, String instant) {
        return json("documents", documents, "documentsLink", "00".repeat(32), "domain", "benchwright.checkpoint/1", "instant", instant, "key",
                key.key().fingerprint().hex(), "number", "1", "root", root, "size", size);
    }

    private String checkpoint(String statement) {
        byte[] signature = key.sign(statement.getBytes(StandardCharsets.UTF_8));
        return json("publicKey", Base64.getEncoder().encodeToString(key.key().encoded()), "signature",
                Base64.getEncoder().encodeToString(signature), "signed", statement);
    }

    private static String file(String checkpoint) {
        return "{\"format\":\"benchwright.checkpoint-file/1\"," + checkpoint.substring(1);
    }

    /** A proof for the first event of a ledger that has no other. */
    private String proof(String test, String event) {
        Link before = Link.before(TEST);
        String root = MerkleTree.eventLeaf(TEST, 1, before.next(event.getBytes(StandardCharsets.UTF_8))).hex();
        return json("checkpoint", checkpoint(statement("1", root, "0", "2026-03-02T07:30:00Z")), "earlier", "[]", "event", quoted(event), "format",
                "benchwright.inclusion-proof/1", "path", "[]", "position", "1", "previous", before.hex(), "sequence", "1", "test", test);
    }

    private static String quoted(String event) {
        return event.replace("\\", "\\\\").replace("\"", "\\\"");
    }

    private void good(String what, String text) {
        holding.add(what);
        files.put(what, text);
    }

    private void nonsense(String of, String text) {
        files.put(of + ", a zero and more behind it", text + "\0 and more");
        files.put(of + ", more behind it", text + " {}");
        files.put(of + ", a mark of byte order", "\uFEFF" + text);
        files.put(of + ", named twice", text.replaceFirst("\\{", "{\"format\":\"x\","));
        files.put(of + ", one member more", text.replaceFirst("\\{", "{\"more\":\"x\","));
        files.put(of + ", a number more", text.replaceFirst("\\{", "{\"more\":1,"));
        files.put(of + ", deep", text.replaceFirst("\\{", "{\"more\":" + "[".repeat(100_000) + "]".repeat(100_000) + ","));
        files.put(of + ", more in its checkpoint", text.replace("\"publicKey\"", "\"more\":\"x\",\"publicKey\""));
        files.put(of + ", an escape with a sign", text.replaceFirst("benchwright", "\\\\u+062enchwright"));
        files.put(of + ", an escape in other digits", text.replaceFirst("benchwright", "\\\\u\uFF10\uFF10\uFF16\uFF12enchwright"));
        good(of + ", an escape", text.replaceFirst("benchwright", "\\\\u0062enchwright"));
        files.put(of + ", size 0", text.replace("\"size\":\"1\"", "\"size\":\"0\""));
        files.put(of + ", a huge size", text.replace("\"size\":\"1\"", "\"size\":\"" + "9".repeat(200_000) + "\""));
    }

    @Test
    void programAndCheckerSayTheSame() throws Exception {
        String root = "11".repeat(32);
        String sound = file(checkpoint(statement("1", root, "0", "2026-03-02T07:30:00Z")));
        good("checkpoint", sound);
        nonsense("checkpoint", sound);
        files.put("signed: fewer than no documents", file(checkpoint(statement("1", root, "-1", "2026-03-02T07:30:00Z"))));
        files.put("signed: a root that is none", file(checkpoint(statement("1", "11", "0", "2026-03-02T07:30:00Z"))));
        files.put("signed: another form of the instant", file(checkpoint(statement("1", root, "0", "2026-03-02T07:30:00.000Z"))));
        files.put("signed: no instant", file(checkpoint(statement("1", root, "0", "yesterday"))));
        files.put("signed: more", file(checkpoint(statement("1", root, "0", "2026-03-02T07:30:00Z").replace("}", ",\"then\":\"x\"}"))));
        String proof = proof(TEST.value(), EVENT);
        good("proof", proof);
        nonsense("proof", proof);
        for (String position : List.of("0", "2", "-1", "9223372036854775808", "18446744073709551617")) {
            files.put("position " + position, proof.replace("\"position\":\"1\"", "\"position\":\"" + position + "\""));
        }
        files.put("a step too many", proof.replace("\"path\":[]", "\"path\":[\"" + root + "\"]"));
        files.put("a path that is none", proof.replace("\"path\":[]", "\"path\":{}"));
        files.put("half a character", proof.replace("läuft?", "läuft\\ud800"));
        files.put("a letter in two pieces", proof.replace("läuft", "la\\u0308uft"));
        files.put("another test's event", proof(TEST.value(), EVENT.replace("T-22222", "T-33333")));
        files.put("an event of another number", proof(TEST.value(), EVENT.replace("\"1\"", "\"2\"")));
        files.put("no event", proof(TEST.value(), "nothing"));
        files.put("an event with a number", proof(TEST.value(), EVENT.replace("\"note\":", "\"count\":1,\"note\":")));
        good("an event that is nested as deep as may be", proof(TEST.value(),
                EVENT.replace("\"läuft?\"", "[".repeat(62) + "\"x\"" + "]".repeat(62))));
        files.put("an event that is nested deeper", proof(TEST.value(), EVENT.replace("\"läuft?\"", "[".repeat(63) + "\"x\"" + "]".repeat(63))));
        files.put("a test that can be none", proof("somewhere", EVENT));

        List<String> names = List.copyOf(files.keySet());
        List<String> program = names.stream().filter(name -> Samples.holds(files.get(name))).toList();
        List<String> checker = new ArrayList<>();
        List<String> lines = CheckProofTest.check(folder, names.stream().map(files::get).toList()).lines();
        for (int i = 0; i < names.size(); i++) {
            if (lines.contains(folder.resolve(i + ".json") + ": holds")) {
                checker.add(names.get(i));
            }
        }
        assertEquals(names.size(), lines.stream().filter(line -> line.contains(".json: ")).count(), "it speaks of every file");
        assertEquals(String.join("\n", holding), String.join("\n", program), "the program");
        assertEquals(String.join("\n", holding), String.join("\n", checker), "the checker");
        assertTrue(names.size() > 40);
    }
}
