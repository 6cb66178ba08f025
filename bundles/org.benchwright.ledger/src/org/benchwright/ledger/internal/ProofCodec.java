package org.benchwright.ledger.internal;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.benchwright.core.Digest;
import org.benchwright.ledger.Checkpoint;
import org.benchwright.ledger.ConsistencyProof;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.ProofFormatException;
import org.benchwright.ledger.SignedCheckpoint;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.JsonValue.Items;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;

/** Checkpoints and proofs as JSON files and back. Reading is strict: just the members that writing puts there. */
public final class ProofCodec {

    private static final String FORMAT = "format";
    private static final String CHECKPOINT = "benchwright.checkpoint-file/1";
    private static final String INCLUSION = "benchwright.inclusion-proof/1";
    private static final String CONSISTENCY = "benchwright.consistency-proof/1";
    private static final int LONGEST_SAID = 60;

    private ProofCodec() {
    }

    /** A checkpoint file. */
    public static String text(SignedCheckpoint signed) {
        return text(CHECKPOINT, members(signed));
    }

    /** An inclusion proof file. */
    public static String text(InclusionProof proof) {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("test", new Text(proof.test().value()));
        members.put("sequence", number(proof.sequence()));
        members.put("position", number(proof.position()));
        members.put("previous", new Text(proof.previous().hex()));
        members.put("event", new Text(proof.event()));
        members.put("earlier", new Items(proof.earlier().stream().<JsonValue>map(Text::new).toList()));
        members.put("path", path(proof.path()));
        members.put("checkpoint", new Members(members(proof.checkpoint())));
        return text(INCLUSION, members);
    }

    /** A consistency proof file. */
    public static String text(ConsistencyProof proof) {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("older", new Members(members(proof.older())));
        members.put("newer", new Members(members(proof.newer())));
        members.put("path", path(proof.path()));
        return text(CONSISTENCY, members);
    }

    private static String text(String format, Map<String, JsonValue> members) {
        Map<String, JsonValue> all = new LinkedHashMap<>();
        all.put(FORMAT, new Text(format));
        all.putAll(members);
        return CanonicalJson.indented(new Members(all)) + "\n";
    }

    private static Map<String, JsonValue> members(SignedCheckpoint signed) {
        Checkpoint said = signed.checkpoint();
        Map<String, JsonValue> statement = new LinkedHashMap<>();
        statement.put("domain", new Text(Statements.CHECKPOINT));
        statement.put("number", number(said.number()));
        statement.put("size", number(said.size()));
        statement.put("root", new Text(said.root().hex()));
        statement.put("documents", number(said.documents()));
        statement.put("documentsLink", new Text(said.documentsLink().hex()));
        statement.put("instant", new Text(said.instant().toString()));
        statement.put("key", new Text(said.fingerprint().hex()));
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("signed", new Members(statement));
        members.put("publicKey", new Text(Base64.getEncoder().encodeToString(signed.key().encoded())));
        members.put("signature", new Text(Base64.getEncoder().encodeToString(said.signature())));
        return members;
    }

    private static JsonValue number(long value) {
        return new Text(Long.toString(value));
    }

    private static JsonValue path(List<Digest> path) {
        return new Items(path.stream().<JsonValue>map(digest -> new Text(digest.hex())).toList());
    }

    /** The checkpoint in a file's text. */
    public static SignedCheckpoint checkpoint(String text) throws ProofFormatException {
        return read(text, CHECKPOINT, Set.of(FORMAT, "signed", "publicKey", "signature"), ProofCodec::checkpoint, ProofCodec::text);
    }

    /** The inclusion proof in a file's text. */
    public static InclusionProof inclusion(String text) throws ProofFormatException {
        return read(text, INCLUSION,
                Set.of(FORMAT, "test", "sequence", "position", "previous", "event", "earlier", "path", "checkpoint"), proof -> {
                    List<String> earlier = strings(proof, "earlier");
                    List<Digest> path = strings(proof, "path").stream().map(Digest::parse).toList();
                    return new InclusionProof(new TestId(string(proof, "test")), count(proof, "sequence", 1), count(proof, "position", 1),
                            new Link(Digest.parse(string(proof, "previous"))), string(proof, "event"), earlier, path,
                            checkpoint(part(proof, "checkpoint")));
                }, ProofCodec::text);
    }

    /** The consistency proof in a file's text. */
    public static ConsistencyProof consistency(String text) throws ProofFormatException {
        return read(text, CONSISTENCY, Set.of(FORMAT, "older", "newer", "path"),
                proof -> new ConsistencyProof(checkpoint(part(proof, "older")), checkpoint(part(proof, "newer")),
                        strings(proof, "path").stream().map(Digest::parse).toList()), ProofCodec::text);
    }

    @FunctionalInterface
    private interface Reading<T> {
        T of(Members members) throws Odd;
    }

    /** What would be written otherwise is refused: a number with a sign, an instant with seconds that nobody signed. */
    private static <T> T read(String text, String format, Set<String> names, Reading<T> reading, Function<T, String> writing)
            throws ProofFormatException {
        try {
            Members members = CanonicalJson.parseComposed(text);
            Optional<String> said = members.text(FORMAT);
            if (!said.equals(Optional.of(format))) {
                throw refused(format, said.isPresent() ? Messages.text("proof.saysOther", shortened(said.get()))
                        : Messages.text("proof.saysNothing"));
            }
            if (!members.values().keySet().equals(names)) {
                throw refused(format, Messages.text("proof.otherMembers"));
            }
            T read = reading.of(members);
            if (!CanonicalJson.parse(writing.apply(read)).equals(members)) {
                throw refused(format, Messages.text("proof.otherwise"));
            }
            return read;
        } catch (Odd odd) {
            throw refused(format, Messages.text("proof.oddMember", odd.getMessage()));
        } catch (PayloadException malformed) {
            throw new ProofFormatException(Messages.text("proof.malformed", format, Messages.text("proof.noJson")), malformed);
        } catch (IllegalArgumentException | DateTimeException malformed) {
            throw new ProofFormatException(Messages.text("proof.malformed", format, Messages.text("proof.otherwise")), malformed);
        }
    }

    /** What a file says of itself may be as long as it likes. */
    private static String shortened(String said) {
        return said.length() <= LONGEST_SAID ? said : said.substring(0, said.offsetByCodePoints(0, LONGEST_SAID / 2)) + "\u2026";
    }

    /** A member that lacks, or is not what it must be; the message is its name. */
    private static final class Odd extends Exception {

        private static final long serialVersionUID = 1L;

        Odd(String name) {
            super(name);
        }
    }

    private static SignedCheckpoint checkpoint(Members members) throws Odd {
        Members said = part(members, "signed");
        if (!string(said, "domain").equals(Statements.CHECKPOINT) || said.values().size() != 8) {
            throw new Odd("signed");
        }
        SignerKey key = SignerKey.decode(bytes(members, "publicKey"))
                .orElseThrow(() -> new Odd("publicKey"));
        Checkpoint checkpoint = new Checkpoint(count(said, "number", 1), count(said, "size", 1), Digest.parse(string(said, "root")),
                count(said, "documents", 0), Digest.parse(string(said, "documentsLink")), Instant.parse(string(said, "instant")),
                Digest.parse(string(said, "key")), bytes(members, "signature"));
        return new SignedCheckpoint(checkpoint, key);
    }

    private static Members part(Members members, String name) throws Odd {
        return members.members(name).orElseThrow(() -> new Odd(name));
    }

    private static String string(Members members, String name) throws Odd {
        return members.text(name).orElseThrow(() -> new Odd(name));
    }

    /** Base64 in its one form: the bits behind the last byte are zero. */
    private static byte[] bytes(Members members, String name) throws Odd {
        String text = string(members, name);
        byte[] bytes = Base64.getDecoder().decode(text);
        if (!Base64.getEncoder().encodeToString(bytes).equals(text)) {
            throw new Odd(name);
        }
        return bytes;
    }

    private static long count(Members members, String name, long least) throws Odd {
        long count = Long.parseLong(string(members, name));
        if (count < least) {
            throw new Odd(name);
        }
        return count;
    }

    private static List<String> strings(Members members, String name) throws Odd {
        if (!(members.values().get(name) instanceof Items items)) {
            throw new Odd(name);
        }
        List<String> strings = new ArrayList<>();
        for (JsonValue item : items.values()) {
            if (!(item instanceof Text text)) {
                throw new Odd(name);
            }
            strings.add(text.value());
        }
        return strings;
    }

    private static ProofFormatException refused(String format, String why) {
        return new ProofFormatException(Messages.text("proof.malformed", format, why));
    }
}
