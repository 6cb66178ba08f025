import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Checks checkpoints and proofs of a bench's ledger without any part of the program that made them. It needs a JDK 17 and this one file:
 *
 * <pre>java CheckProof.java FILE... [--key FINGERPRINT]</pre>
 *
 * Every file is a JSON file as proofs.md describes it. With the fingerprint of the bench's key, noted elsewhere, it is also looked at who
 * signed. The exit status is 0 when everything holds, 1 when something does not, 2 when a file can't be read.
 */
public final class CheckProof {

    private static final int LARGEST = 256 << 20;
    private static final byte[] LEAF = {0};
    private static final byte[] NODE = {1};

    private final String wantedKey;
    private final List<String> seen = new ArrayList<>();

    private CheckProof(String wantedKey) {
        this.wantedKey = wantedKey;
    }

    /** What came of one file: 0, 1 or 2 as for the exit status, what was seen on the way, and the judgement as the last line. */
    private record Finding(int status, List<String> lines) {
    }

    /** Something in a file is not true. */
    private static final class NotTrue extends Exception {
        private static final long serialVersionUID = 1L;

        NotTrue(String words) {
            super(words);
        }
    }

    /** A file is not of the form that proofs.md describes. */
    private static final class NotReadable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NotReadable(String words) {
            super(words);
        }
    }

    public static void main(String[] arguments) {
        List<String> files = new ArrayList<>();
        String key = "";
        for (int i = 0; i < arguments.length; i++) {
            if (arguments[i].equals("--key") && i + 1 < arguments.length) {
                key = arguments[++i];
            } else {
                files.add(arguments[i]);
            }
        }
        if (files.isEmpty()) {
            System.err.println("java CheckProof.java FILE... [--key FINGERPRINT]");
            System.exit(2);
        }
        int worst = 0;
        for (String file : files) {
            Finding finding = new CheckProof(key).check(file);
            finding.lines().forEach(System.out::println);
            worst = Math.max(worst, finding.status());
        }
        System.exit(worst);
    }

    private Finding check(String file) {
        try {
            Map<?, ?> proof = object(new Json(content(Path.of(file))).read());
            String format = text(proof, "format");
            switch (format) {
                case "benchwright.checkpoint-file/1" -> {
                    checkpoint(proof, "checkpoint", "format", "publicKey", "signature", "signed");
                }
                case "benchwright.inclusion-proof/1" -> inclusion(proof);
                case "benchwright.consistency-proof/1" -> consistency(proof);
                default -> throw new NotReadable("unknown format " + format);
            }
            return finding(0, file + ": holds");
        } catch (NotTrue refuted) {
            return finding(1, file + ": DOES NOT HOLD: " + refuted.getMessage());
        } catch (IOException | RuntimeException unreadable) {
            return finding(2, file + ": can't be read: " + unreadable.getMessage());
        }
    }

    private static String content(Path file) throws IOException {
        try (InputStream stream = Files.newInputStream(file)) {
            byte[] bytes = stream.readNBytes(LARGEST + 1);
            if (bytes.length > LARGEST) {
                throw new NotReadable("it is larger than " + LARGEST + " bytes");
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        }
    }

    private Finding finding(int status, String judgement) {
        seen.add(judgement);
        return new Finding(status, List.copyOf(seen));
    }

    // ---- the three kinds of file

    /** A checkpoint whose signature was found true. */
    private record Checkpoint(long number, long size, byte[] root) {
    }

    private Checkpoint checkpoint(Map<?, ?> file, String name) throws NotTrue {
        return checkpoint(file, name, "publicKey", "signature", "signed");
    }

    private Checkpoint checkpoint(Map<?, ?> file, String name, String... members) throws NotTrue {
        just(file, members);
        Map<?, ?> signed = object(file.get("signed"));
        just(signed, "documents", "documentsLink", "domain", "instant", "key", "number", "root", "size");
        byte[] key = base64(text(file, "publicKey"));
        String fingerprint = hex(sha256(key));
        require(text(signed, "domain").equals("benchwright.checkpoint/1"), name + ": something else was signed");
        require(text(signed, "key").equals(fingerprint), name + ": it names another key than the one in the file");
        byte[] signature = base64(text(file, "signature"));
        require(signature.length == 64 && verifies(key, canonical(signed), signature), name + ": the signature is false");
        require(wantedKey.isEmpty() || wantedKey.equals(fingerprint), name + ": it was signed with another key than " + wantedKey);
        require(text(signed, "documents").equals("0") || number(signed, "documents") > 0, name + ": it tells of fewer than no documents");
        bytes(signed, "documentsLink");
        if (!Instant.parse(text(signed, "instant")).toString().equals(text(signed, "instant"))) {
            throw new NotReadable("an instant is written otherwise");
        }
        seen.add("  " + name + " " + text(signed, "number") + " of " + text(signed, "instant") + ": " + text(signed, "size")
                + " events, signed with key " + fingerprint);
        return new Checkpoint(number(signed, "number"), number(signed, "size"), bytes(signed, "root"));
    }

    private void inclusion(Map<?, ?> proof) throws NotTrue {
        just(proof, "checkpoint", "earlier", "event", "format", "path", "position", "previous", "sequence", "test");
        Checkpoint checkpoint = checkpoint(object(proof.get("checkpoint")), "checkpoint");
        String test = text(proof, "test");
        if (!test.matches("T-[2-9A-HJKMNP-TV-Z]{5}-[2-9A-HJKMNP-TV-Z]{5}|B-(PEOPLE|REVISIONS|RECEIPTS|INSTRUMENTS)")) {
            throw new NotReadable("there is no test of that name");
        }
        long sequence = number(proof, "sequence");
        byte[] previous = bytes(proof, "previous");
        List<?> earlier = list(proof, "earlier");
        if (!earlier.isEmpty() || sequence == 1) {
            byte[] link = sha256(("benchwright.link/1\n" + test + "\n").getBytes(StandardCharsets.UTF_8));
            for (int i = 0; i < earlier.size(); i++) {
                link = next(link, event(string(earlier.get(i)), test, i + 1));
            }
            require(earlier.size() == sequence - 1 && MessageDigest.isEqual(link, previous), "the earlier events are not those before this one");
        }
        byte[] link = next(previous, event(text(proof, "event"), test, sequence));
        String leaf = "benchwright.leaf/1\n" + test + "\n" + sequence + "\n" + hex(link) + "\n";
        long position = number(proof, "position");
        byte[] root = climb(sha256(LEAF, leaf.getBytes(StandardCharsets.UTF_8)), position - 1, checkpoint.size(), list(proof, "path"));
        require(MessageDigest.isEqual(root, checkpoint.root()), "the path does not lead to the checkpoint's root");
        seen.add("  event " + sequence + " of test " + test + " stands at position " + position + " of the ledger; link " + hex(link));
        seen.add("  " + (earlier.isEmpty() && sequence > 1 ? "the events before it are tied by that link, but not in this file"
                : "with all " + (sequence - 1) + " events before it"));
    }

    private void consistency(Map<?, ?> proof) throws NotTrue {
        just(proof, "format", "newer", "older", "path");
        Checkpoint older = checkpoint(object(proof.get("older")), "older checkpoint");
        Checkpoint newer = checkpoint(object(proof.get("newer")), "newer checkpoint");
        require(older.number() <= newer.number() && older.size() <= newer.size(), "the older checkpoint tells of more than the newer");
        List<byte[]> path = new ArrayList<>();
        for (Object step : list(proof, "path")) {
            path.add(bytes(string(step)));
        }
        if (older.size() == newer.size()) {
            require(path.isEmpty() && MessageDigest.isEqual(older.root(), newer.root()), "two roots for the same events");
        } else {
            grow(older, newer, path);
        }
        seen.add("  the " + older.size() + " events of the older are the first of the " + newer.size() + " of the newer, unchanged");
    }

    /** RFC 9162, 2.1.4.2: the path leads to both roots. */
    private static void grow(Checkpoint older, Checkpoint newer, List<byte[]> given) throws NotTrue {
        List<byte[]> path = new ArrayList<>(given);
        if (Long.bitCount(older.size()) == 1) {
            path.add(0, older.root());
        }
        require(!path.isEmpty(), "the path is too short");
        long place = older.size() - 1;
        long last = newer.size() - 1;
        while ((place & 1) == 1) {
            place >>= 1;
            last >>= 1;
        }
        byte[] before = path.get(0);
        byte[] after = path.get(0);
        for (byte[] step : path.subList(1, path.size())) {
            require(last != 0, "the path is too long");
            if ((place & 1) == 1 || place == last) {
                before = sha256(NODE, step, before);
                after = sha256(NODE, step, after);
                while ((place & 1) == 0 && place != 0) {
                    place >>= 1;
                    last >>= 1;
                }
            } else {
                after = sha256(NODE, after, step);
            }
            place >>= 1;
            last >>= 1;
        }
        require(last == 0, "the path is too short");
        require(MessageDigest.isEqual(before, older.root()), "the path does not lead to the older root");
        require(MessageDigest.isEqual(after, newer.root()), "the path does not lead to the newer root");
    }

    /** RFC 9162, 2.1.3.2: the root that the path leads to from the leaf at index. */
    private static byte[] climb(byte[] leaf, long index, long size, List<?> path) throws NotTrue {
        require(index >= 0 && index < size, "the position is outside the checkpoint");
        long place = index;
        long last = size - 1;
        byte[] hash = leaf;
        for (Object each : path) {
            require(last != 0, "the path is too long");
            byte[] step = bytes(string(each));
            if ((place & 1) == 1 || place == last) {
                hash = sha256(NODE, step, hash);
                while ((place & 1) == 0 && place != 0) {
                    place >>= 1;
                    last >>= 1;
                }
            } else {
                hash = sha256(NODE, hash, step);
            }
            place >>= 1;
            last >>= 1;
        }
        require(last == 0, "the path is too short");
        return hash;
    }

    /** The event's bytes, after a look whether it says that it is this one. */
    private static byte[] event(String text, String test, long sequence) throws NotTrue {
        Map<?, ?> event = object(new Json(text).read());
        require(text(event, "test").equals(test) && number(event, "sequence") == sequence, "an event says that it is another one");
        return text.getBytes(StandardCharsets.UTF_8);
    }

    // ---- hashes, keys, canonical form

    private static byte[] next(byte[] link, byte[] event) {
        return sha256(link, event);
    }

    private static byte[] sha256(byte[]... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (byte[] part : parts) {
                digest.update(part);
            }
            return digest.digest();
        } catch (GeneralSecurityException missing) {
            throw new IllegalStateException(missing);
        }
    }

    private static boolean verifies(byte[] key, byte[] statement, byte[] signature) {
        try {
            PublicKey known = KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(key));
            Signature verifier = Signature.getInstance("Ed25519");
            verifier.initVerify(known);
            verifier.update(statement);
            return verifier.verify(signature);
        } catch (GeneralSecurityException malformed) {
            return false;
        }
    }

    /** RFC 8785 for an object of strings that need no escapes: names in order, no blanks. */
    private static byte[] canonical(Map<?, ?> strings) {
        Map<String, String> sorted = new TreeMap<>();
        strings.forEach((name, value) -> sorted.put(plain(string(name)), plain(string(value))));
        List<String> members = new ArrayList<>();
        sorted.forEach((name, value) -> members.add("\"" + name + "\":\"" + value + "\""));
        return ("{" + String.join(",", members) + "}").getBytes(StandardCharsets.UTF_8);
    }

    private static String plain(String text) {
        if (!text.matches("[ -~&&[^\"\\\\]]*")) {
            throw new NotReadable("a checkpoint has a character that none has");
        }
        return text;
    }

    private static void require(boolean holds, String otherwise) throws NotTrue {
        if (!holds) {
            throw new NotTrue(otherwise);
        }
    }

    // ---- members of a file

    private static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }

    private static byte[] base64(String text) {
        byte[] bytes = Base64.getDecoder().decode(text);
        if (!Base64.getEncoder().encodeToString(bytes).equals(text)) {
            throw new NotReadable("Base64 that encodes to something else");
        }
        return bytes;
    }

    private static byte[] bytes(String hash) {
        if (!hash.matches("[0-9a-f]{64}")) {
            throw new NotReadable("a hash is not of 64 small hexadecimal digits");
        }
        return HexFormat.of().parseHex(hash);
    }

    /** Who reads a file must not have to ask what else it says. */
    private static void just(Map<?, ?> object, String... names) {
        if (!object.keySet().equals(Set.of(names))) {
            throw new NotReadable("members are missing, or there are others: " + object.keySet());
        }
    }

    private static byte[] bytes(Map<?, ?> object, String name) {
        return bytes(text(object, name));
    }

    private static long number(Map<?, ?> object, String name) {
        String text = text(object, name);
        if (!text.matches("[1-9][0-9]{0,18}")) {
            throw new NotReadable(name + " is no number from 1 in decimal digits");
        }
        return new BigInteger(text).longValueExact();
    }

    private static String text(Map<?, ?> object, String name) {
        return string(object.get(name));
    }

    private static String string(Object value) {
        if (value instanceof String text) {
            return text;
        }
        throw new NotReadable("a string is missing");
    }

    private static List<?> list(Map<?, ?> object, String name) {
        if (object.get(name) instanceof List<?> list) {
            return list;
        }
        throw new NotReadable("the list " + name + " is missing");
    }

    private static Map<?, ?> object(Object value) {
        if (value instanceof Map<?, ?> map) {
            return map;
        }
        throw new NotReadable("an object is missing");
    }

    /** Reads JSON made of objects, arrays, strings, true, false and null; there are no numbers in these files. */
    private static final class Json {

        private static final int DEEPEST = 63;

        private final String text;
        private int at;

        Json(String text) {
            this.text = text;
        }

        Object read() {
            Object value = value(0);
            peek();
            if (at < text.length()) {
                throw new NotReadable("there is more behind the JSON");
            }
            return value;
        }

        private Object value(int depth) {
            if (depth > DEEPEST) {
                throw new NotReadable("nested too deeply");
            }
            return switch (peek()) {
                case '{' -> members(depth);
                case '[' -> items(depth);
                case '"' -> string();
                case 't' -> word("true", Boolean.TRUE);
                case 'f' -> word("false", Boolean.FALSE);
                case 'n' -> word("null", Json.class);
                default -> throw new NotReadable("no JSON at character " + at);
            };
        }

        private Object word(String word, Object value) {
            if (!text.startsWith(word, at)) {
                throw new NotReadable("no JSON at character " + at);
            }
            at += word.length();
            return value;
        }

        private Map<String, Object> members(int depth) {
            Map<String, Object> members = new TreeMap<>();
            for (boolean more = open('}'); more; more = another('}')) {
                peek();
                String name = string();
                take(':');
                if (members.put(name, value(depth + 1)) != null) {
                    throw new NotReadable("\"" + name + "\" is there twice");
                }
            }
            return members;
        }

        private List<Object> items(int depth) {
            List<Object> items = new ArrayList<>();
            for (boolean more = open(']'); more; more = another(']')) {
                items.add(value(depth + 1));
            }
            return items;
        }

        private boolean open(char end) {
            at++;
            if (peek() != end) {
                return true;
            }
            at++;
            return false;
        }

        private boolean another(char end) {
            if (peek() == ',') {
                at++;
                return true;
            }
            take(end);
            return false;
        }

        private void take(char wanted) {
            if (peek() != wanted) {
                throw new NotReadable(wanted + " was expected at character " + at);
            }
            at++;
        }

        private String string() {
            take('"');
            StringBuilder string = new StringBuilder();
            while (at < text.length() && text.charAt(at) != '"') {
                char next = text.charAt(at++);
                if (next < ' ') {
                    throw new NotReadable("a control character at character " + at);
                }
                string.append(next == '\\' ? escaped() : next);
            }
            if (at == text.length()) {
                throw new NotReadable("a string is cut off");
            }
            at++;
            if (!StandardCharsets.UTF_8.newEncoder().canEncode(string)) {
                throw new NotReadable("half a character before character " + at);
            }
            return string.toString();
        }

        private char escaped() {
            char kind = at < text.length() ? text.charAt(at++) : '\0';
            return switch (kind) {
                case '"', '\\', '/' -> kind;
                case 'b' -> '\b';
                case 'f' -> '\f';
                case 'n' -> '\n';
                case 'r' -> '\r';
                case 't' -> '\t';
                case 'u' -> unit();
                default -> throw new NotReadable("an unknown escape at character " + at);
            };
        }

        private char unit() {
            if (at + 4 > text.length()) {
                throw new NotReadable("an escape is cut off");
            }
            char unit = (char) HexFormat.fromHexDigits(text, at, at + 4);
            at += 4;
            return unit;
        }

        /** The next character that is no blank; a zero at the end. */
        private char peek() {
            while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
                at++;
            }
            return at < text.length() ? text.charAt(at) : '\0';
        }
    }
}
