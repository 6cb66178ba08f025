package org.benchwright.ledger.internal;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.JsonValue.Members;

/**
 * Reads the events that most are, unsigned ones without anything unusual in their texts, straight from their bytes. Of any other it says nothing:
 * {@link EventCodec#skim} reads that, and says what is wrong with it. What is read here, is read there to be the same.
 *
 * <p>Events that stand one after the other share much; what was made of a text is kept for the next of the same bytes. For one thread.
 */
public final class PlainEvents {

    /** The texts of an event in the order of the columns that say the same. */
    public enum Part {
        TEST, SEQUENCE, INSTANT, SITTING, OFFSET, ACTOR, ROLE, KIND
    }

    private static final byte[] BEFORE_ACTOR = ascii("{\"actor\":\"");
    private static final byte[] BEFORE_INSTANT = ascii(",\"format\":\"" + EventCodec.FORMAT + "\",\"instant\":\"");
    private static final byte[] BEFORE_KIND = ascii(",\"kind\":\"");
    private static final byte[] BEFORE_OFFSET = ascii(",\"offset\":\"");
    private static final byte[] BEFORE_PAYLOAD = ascii(",\"payload\":{");
    private static final byte[] BEFORE_ROLE = ascii(",\"role\":\"");
    private static final byte[] BEFORE_SEQUENCE = ascii(",\"sequence\":\"");
    private static final byte[] BEFORE_SITTING = ascii(",\"sitting\":\"");
    private static final byte[] BEFORE_TEST = ascii(",\"test\":\"");
    private static final byte[] SIGNATURE = ascii(SignaturePart.NAME);
    private static final byte[] REFERENCE = ascii("sha256:");
    private static final byte[] TRUE = ascii("true");
    private static final byte[] FALSE = ascii("false");
    private static final byte[] NULL = ascii("null");

    private static final Members NO_PAYLOAD = new Members(Map.of());
    private static final int PAYLOAD_DEPTH = 2;
    /** Of so many digits any number is a long, of so many an int. */
    private static final int LONG_DIGITS = 18;
    private static final int INT_DIGITS = 9;
    /** The first bytes of characters that take two, up to the last before {@link CanonicalJson#FIRST_COMBINING}. */
    private static final int LEAST_LEAD = 0xC2;
    private static final int MOST_LEAD = 0xCB;

    /** Where nothing plain stands. */
    private static final int NOWHERE = -1;

    private final Known<TestId> tests = new Known<>(TestId::stored);
    private final Known<String> kinds = new Known<>(text -> Optional.of(text).filter(EventKinds::isKind));
    private final Known<Role> roles = new Known<>(Role::find);
    private final Known<String> ids = new Known<>(Optional::of);
    private Optional<Actor> actor = Optional.empty();

    private byte[] bytes = new byte[0];
    private int at;
    private final int[] begins = new int[Part.values().length];
    private final int[] ends = new int[Part.values().length];
    private List<Digest> references = List.of();

    /**
     * What a plain event says.
     *
     * @param event      the event without its payload
     * @param references the documents that it names
     */
    public record Plain(Event event, List<Digest> references) {
    }

    /** The event in {@code canonical}, if it is a plain one. */
    public Optional<Plain> read(byte[] canonical) {
        bytes = canonical;
        at = 0;
        references = List.of();
        return isPlain() ? event().map(event -> new Plain(event, references)) : Optional.empty();
    }

    /** Whether a part of the event that was read last is written with these bytes. */
    public boolean says(Part part, byte[] other, int begin, int end) {
        return Arrays.equals(bytes, begins[part.ordinal()], ends[part.ordinal()], other, begin, end);
    }

    private boolean isPlain() {
        return part(BEFORE_ACTOR, Part.ACTOR) && part(BEFORE_INSTANT, Part.INSTANT) && part(BEFORE_KIND, Part.KIND)
                && part(BEFORE_OFFSET, Part.OFFSET) && payload() && part(BEFORE_ROLE, Part.ROLE) && part(BEFORE_SEQUENCE, Part.SEQUENCE)
                && part(BEFORE_SITTING, Part.SITTING) && part(BEFORE_TEST, Part.TEST) && at == bytes.length - 1 && bytes[at] == '}';
    }

    private boolean part(byte[] before, Part part) {
        if (!stands(before, at)) {
            return false;
        }
        int begin = at + before.length;
        int end = text(begin);
        begins[part.ordinal()] = begin;
        ends[part.ordinal()] = end;
        at = end + 1;
        return end != NOWHERE;
    }

    private boolean payload() {
        if (!stands(BEFORE_PAYLOAD, at)) {
            return false;
        }
        at = members(at + BEFORE_PAYLOAD.length, PAYLOAD_DEPTH);
        return at != NOWHERE;
    }

    private Optional<Event> event() {
        Optional<TestId> test = known(tests, Part.TEST);
        Optional<String> kind = known(kinds, Part.KIND);
        Optional<Actor> who = actor();
        Optional<Instant> instant = InstantText.read(string(Part.INSTANT));
        Optional<Duration> offset = DurationText.read(string(Part.OFFSET));
        long sequence = number(Part.SEQUENCE, LONG_DIGITS);
        int sitting = (int) number(Part.SITTING, INT_DIGITS);
        if (test.isEmpty() || kind.isEmpty() || who.isEmpty() || instant.isEmpty() || offset.isEmpty() || sequence < 1 || sitting < 1) {
            return Optional.empty();
        }
        return Optional.of(new Event(test.get(), sequence, instant.get(), sitting, offset.get(), who.get(), kind.get(), NO_PAYLOAD));
    }

    private Optional<Actor> actor() {
        Optional<Role> role = known(roles, Part.ROLE);
        Optional<String> id = known(ids, Part.ACTOR);
        if (role.isEmpty() || id.isEmpty()) {
            return Optional.empty();
        }
        if (actor.isEmpty() || actor.get().role() != role.get() || !actor.get().id().equals(id.get())) {
            actor = actor(id.get(), role.get());
        }
        return actor;
    }

    private static Optional<Actor> actor(String id, Role role) {
        try {
            return Optional.of(new Actor(id, role));
        } catch (IllegalArgumentException noId) {
            return Optional.empty();
        }
    }

    private <T> Optional<T> known(Known<T> known, Part part) {
        return known.of(bytes, begins[part.ordinal()], ends[part.ordinal()]);
    }

    private String string(Part part) {
        int begin = begins[part.ordinal()];
        return new String(bytes, begin, ends[part.ordinal()] - begin, StandardCharsets.UTF_8);
    }

    /** The number, when it is written as a number from 1 on is; else 0. */
    private long number(Part part, int mostDigits) {
        int begin = begins[part.ordinal()];
        int end = ends[part.ordinal()];
        if (begin == end || end - begin > mostDigits || bytes[begin] == '0') {
            return 0;
        }
        long number = 0;
        for (int i = begin; i < end; i++) {
            if (bytes[i] < '0' || bytes[i] > '9') {
                return 0;
            }
            number = number * 10 + bytes[i] - '0';
        }
        return number;
    }

    /** Behind the members of an object that begin there; of the payload itself none may be a signature. */
    private int members(int from, int depth) {
        if (byteAt(from) == '}') {
            return from + 1;
        }
        int here = from;
        int before = NOWHERE;
        int beforeEnd = NOWHERE;
        while (true) {
            int name = here + 1;
            int end = byteAt(here) == '"' ? text(name) : NOWHERE;
            boolean ordered = end != NOWHERE && (before == NOWHERE || Arrays.compareUnsigned(bytes, before, beforeEnd, bytes, name, end) < 0);
            if (!ordered || byteAt(end + 1) != ':' || depth == PAYLOAD_DEPTH && Arrays.equals(bytes, name, end, SIGNATURE, 0, SIGNATURE.length)) {
                return NOWHERE;
            }
            here = value(end + 2, depth + 1);
            if (here == NOWHERE || byteAt(here) == '}') {
                return here == NOWHERE ? NOWHERE : here + 1;
            }
            if (byteAt(here++) != ',') {
                return NOWHERE;
            }
            before = name;
            beforeEnd = end;
        }
    }

    private int items(int from, int depth) {
        if (byteAt(from) == ']') {
            return from + 1;
        }
        int here = from;
        while (true) {
            here = value(here, depth + 1);
            if (here == NOWHERE || byteAt(here) == ']') {
                return here == NOWHERE ? NOWHERE : here + 1;
            }
            if (byteAt(here++) != ',') {
                return NOWHERE;
            }
        }
    }

    private int value(int from, int depth) {
        if (depth > CanonicalJson.DEPTH) {
            return NOWHERE;
        }
        return switch (byteAt(from)) {
            case '"' -> string(from + 1);
            case '{' -> members(from + 1, depth);
            case '[' -> items(from + 1, depth);
            case 't' -> stands(TRUE, from) ? from + TRUE.length : NOWHERE;
            case 'f' -> stands(FALSE, from) ? from + FALSE.length : NOWHERE;
            case 'n' -> stands(NULL, from) ? from + NULL.length : NOWHERE;
            default -> NOWHERE;
        };
    }

    /** Behind the quote after a text, whose document is noted if it names one. */
    private int string(int from) {
        int end = text(from);
        if (end == NOWHERE) {
            return NOWHERE;
        }
        if (end - from > REFERENCE.length && stands(REFERENCE, from)) {
            DocumentReference.parse(new String(bytes, from, end - from, StandardCharsets.UTF_8)).ifPresent(this::refer);
        }
        return end + 1;
    }

    private void refer(Digest document) {
        if (references.isEmpty()) {
            references = new ArrayList<>();
        }
        references.add(document);
    }

    /** The quote that ends the text, if all before it are characters that stand for themselves and that NFC leaves alone. */
    private int text(int from) {
        for (int i = from; i < bytes.length; i++) {
            byte found = bytes[i];
            if (found == '"') {
                return i;
            }
            if (found < 0) {
                int lead = Byte.toUnsignedInt(found);
                i++;
                if (lead < LEAST_LEAD || lead > MOST_LEAD || (byteAt(i) & 0xC0) != 0x80) {
                    return NOWHERE;
                }
            } else if (found < ' ' || found == '\\') {
                return NOWHERE;
            }
        }
        return NOWHERE;
    }

    private boolean stands(byte[] wanted, int from) {
        return from + wanted.length <= bytes.length && Arrays.equals(bytes, from, from + wanted.length, wanted, 0, wanted.length);
    }

    /** The byte there; behind the last, one that stands nowhere in an event. */
    private byte byteAt(int place) {
        return place < bytes.length ? bytes[place] : 0;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    /** What was made of a text last. */
    private static final class Known<T> {
        private final Function<String, Optional<T>> meaning;
        private byte[] text = new byte[0];
        private Optional<T> value = Optional.empty();

        Known(Function<String, Optional<T>> meaning) {
            this.meaning = meaning;
        }

        Optional<T> of(byte[] bytes, int begin, int end) {
            if (value.isEmpty() || !Arrays.equals(text, 0, text.length, bytes, begin, end)) {
                text = Arrays.copyOfRange(bytes, begin, end);
                value = meaning.apply(new String(text, StandardCharsets.UTF_8));
            }
            return value;
        }
    }
}
