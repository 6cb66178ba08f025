package org.benchwright.ledger.internal;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;

/**
 * The byte sequences that are signed: canonical JSON of strings, each beginning with a domain of its own, so that a signature over one
 * kind of statement can never pass for one over another.
 */
public final class Statements {

    /** Domain of a checkpoint's statement. */
    public static final String CHECKPOINT = "benchwright.checkpoint/1";

    private Statements() {
    }

    /**
     * What the signature in an event says: all events of the test up to {@code sequence} and {@code link}, and the event's own kind and
     * payload (without the signature in it).
     */
    public static byte[] signature(TestId test, long sequence, Link link, String kind, Members payload, SignaturePart part) {
        Map<String, String> members = new LinkedHashMap<>();
        members.put("domain", "benchwright.signature/1");
        members.put("test", test.value());
        members.put("sequence", Long.toString(sequence));
        members.put("link", link.hex());
        members.put("kind", kind);
        members.put("payload", Sha256.of(CanonicalJson.bytes(payload.without(SignaturePart.NAME))).hex());
        members.put("meaning", part.meaning());
        members.put("name", part.printedName());
        members.put("instant", part.instant());
        members.put("key", part.fingerprint());
        part.register().ifPresent(number -> members.put(SignaturePart.REGISTER, number));
        return bytes(members);
    }

    /** What the signature of a checkpoint says. */
    public static byte[] checkpoint(long number, long size, Digest root, long documents, Digest documentsLink, Instant instant,
            Digest fingerprint) {
        Map<String, String> members = new LinkedHashMap<>();
        members.put("domain", CHECKPOINT);
        members.put("number", Long.toString(number));
        members.put("size", Long.toString(size));
        members.put("root", root.hex());
        members.put("documents", Long.toString(documents));
        members.put("documentsLink", documentsLink.hex());
        members.put("instant", instant.toString());
        members.put("key", fingerprint.hex());
        return bytes(members);
    }

    /** What a key says of itself when it is first seen. */
    public static byte[] signer(long number, Digest fingerprint, Instant firstSeen) {
        Map<String, String> members = new LinkedHashMap<>();
        members.put("domain", "benchwright.signer/1");
        members.put("number", Long.toString(number));
        members.put("key", fingerprint.hex());
        members.put("firstSeen", firstSeen.toString());
        return bytes(members);
    }

    /** What a bench says of a key that signed in another ledger, when it brings what was signed from there. */
    public static byte[] brought(long number, Digest fingerprint, Instant firstSeen, Digest bench) {
        Map<String, String> members = new LinkedHashMap<>();
        members.put("domain", "benchwright.brought-signer/1");
        members.put("number", Long.toString(number));
        members.put("key", fingerprint.hex());
        members.put("firstSeen", firstSeen.toString());
        members.put("by", bench.hex());
        return bytes(members);
    }

    private static byte[] bytes(Map<String, String> strings) {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        strings.forEach((name, value) -> members.put(name, new Text(value)));
        return CanonicalJson.bytes(new Members(members));
    }
}
