package org.benchwright.ledger.internal;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;

/** Events to canonical bytes and back. Reading is strict: bytes that writing would not have made are refused. */
public final class EventCodec {

    /** Name and version of the event's form, inside the bytes. */
    public static final String FORMAT = "benchwright.event/1";

    /** Longest event in bytes; what is longer belongs into an attachment. */
    public static final int LONGEST = 1 << 20;

    private static final Set<String> NAMES = Set.of("format", "test", "sequence", "instant", "sitting", "offset", "actor", "role", "kind",
            "payload");

    private EventCodec() {
    }

    /** The bytes to keep and to make the link over. */
    public static byte[] encode(Event event) throws PayloadException {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("format", new Text(FORMAT));
        members.put("test", new Text(event.test().value()));
        members.put("sequence", new Text(Long.toString(event.sequence())));
        members.put("instant", new Text(event.instant().toString()));
        members.put("sitting", new Text(Integer.toString(event.sitting())));
        members.put("offset", new Text(event.offset().toString()));
        members.put("actor", new Text(event.actor().id()));
        members.put("role", new Text(event.actor().role().word()));
        members.put("kind", new Text(event.kind()));
        members.put("payload", event.payload());
        byte[] bytes = CanonicalJson.bytes(new Members(members));
        if (bytes.length > LONGEST) {
            throw new PayloadException(Messages.text("payload.long", bytes.length, LONGEST));
        }
        return bytes;
    }

    /** The event in {@code bytes}. */
    public static Event decode(byte[] bytes) throws PayloadException {
        return read(bytes).event();
    }

    /**
     * An event, and how its bytes say it.
     *
     * @param event   the event
     * @param members the texts in the bytes
     */
    public record Said(Event event, Members members) {

        /** The text of a member. */
        public String text(String name) {
            return members.text(name).orElseThrow();
        }
    }

    /** The event in {@code bytes}, with the texts that they hold. */
    public static Said read(byte[] bytes) throws PayloadException {
        Members members = CanonicalJson.parseCanonical(bytes);
        if (!members.values().keySet().equals(NAMES) || !members.text("format").filter(FORMAT::equals).isPresent()) {
            throw refused();
        }
        Event event = event(members);
        if (!said(event, members)) {
            throw refused();
        }
        return new Said(event, members);
    }

    /** Whether the members are those that the event is written with: a number can be read in more than one form. */
    private static boolean said(Event event, Members members) throws PayloadException {
        return text(members, "sequence").equals(Long.toString(event.sequence()))
                && text(members, "sitting").equals(Integer.toString(event.sitting()));
    }

    private static Event event(Members members) throws PayloadException {
        try {
            String kind = text(members, "kind");
            long sequence = Long.parseLong(text(members, "sequence"));
            int sitting = Integer.parseInt(text(members, "sitting"));
            Duration offset = DurationText.read(text(members, "offset")).orElseThrow(EventCodec::refused);
            if (!EventKinds.isKind(kind) || sequence < 1 || sitting < 1) {
                throw refused();
            }
            Actor actor = new Actor(text(members, "actor"), Role.find(text(members, "role")).orElseThrow(EventCodec::refused));
            return new Event(new TestId(text(members, "test")), sequence, InstantText.read(text(members, "instant")).orElseThrow(EventCodec::refused), sitting, offset, actor,
                    kind, members.members("payload").orElseThrow(EventCodec::refused));
        } catch (IllegalArgumentException | DateTimeException outOfRange) {
            throw new PayloadException(Messages.text("event.malformed"), outOfRange);
        }
    }

    private static String text(Members members, String name) throws PayloadException {
        return members.text(name).orElseThrow(EventCodec::refused);
    }

    private static PayloadException refused() {
        return new PayloadException(Messages.text("event.malformed"));
    }
}
