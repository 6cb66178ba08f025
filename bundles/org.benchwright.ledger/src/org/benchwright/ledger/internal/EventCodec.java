package org.benchwright.ledger.internal;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchwright.core.Actor;
import org.benchwright.core.Digest;
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

    private static final Members NO_PAYLOAD = new Members(Map.of());

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
        return read(bytes);
    }

    /**
     * What verification needs of an event's bytes.
     *
     * @param event      the event; its payload is left out unless it is signed
     * @param texts      the texts of its members, as they are in the bytes
     * @param references the documents that it names
     */
    public record Said(Event event, Map<String, String> texts, List<Digest> references) {
    }

    /** Reads what verification needs. Refuses exactly what {@link #decode} refuses. */
    public static Said skim(byte[] bytes) throws PayloadException {
        String text = CanonicalJson.utf8(bytes);
        Map<String, String> texts = new HashMap<>();
        CanonicalReader.Skimmed skimmed = CanonicalReader.skim(text, "payload", SignaturePart.NAME, texts);
        if (!texts.keySet().equals(NAMES) || !FORMAT.equals(texts.get("format"))) {
            throw refused();
        }
        Members payload = skimmed.named() ? CanonicalReader.read(text).members("payload").orElseThrow(EventCodec::refused) : NO_PAYLOAD;
        Event event = event(texts, payload);
        if (!said(event, texts)) {
            throw refused();
        }
        return new Said(event, texts, skimmed.references());
    }

    private static Event read(byte[] bytes) throws PayloadException {
        Members members = CanonicalJson.parseCanonical(bytes);
        if (!members.values().keySet().equals(NAMES) || !members.text("format").filter(FORMAT::equals).isPresent()) {
            throw refused();
        }
        Map<String, String> texts = new HashMap<>();
        for (String name : NAMES) {
            if (!name.equals("payload")) {
                texts.put(name, members.text(name).orElseThrow(EventCodec::refused));
            }
        }
        Event event = event(texts, members.members("payload").orElseThrow(EventCodec::refused));
        if (!said(event, texts)) {
            throw refused();
        }
        return event;
    }

    /** Whether the members are those that the event is written with: a number can be read in more than one form. */
    private static boolean said(Event event, Map<String, String> texts) {
        return texts.get("sequence").equals(Long.toString(event.sequence()))
                && texts.get("sitting").equals(Integer.toString(event.sitting()));
    }

    private static Event event(Map<String, String> texts, Members payload) throws PayloadException {
        try {
            String kind = texts.get("kind");
            long sequence = Long.parseLong(texts.get("sequence"));
            int sitting = Integer.parseInt(texts.get("sitting"));
            Duration offset = DurationText.read(texts.get("offset")).orElseThrow(EventCodec::refused);
            if (!EventKinds.isKind(kind) || sequence < 1 || sitting < 1) {
                throw refused();
            }
            Actor actor = new Actor(texts.get("actor"), Role.find(texts.get("role")).orElseThrow(EventCodec::refused));
            return new Event(new TestId(texts.get("test")), sequence, InstantText.read(texts.get("instant")).orElseThrow(EventCodec::refused),
                    sitting, offset, actor, kind, payload);
        } catch (IllegalArgumentException | DateTimeException outOfRange) {
            throw new PayloadException(Messages.text("event.malformed"), outOfRange);
        }
    }

    private static PayloadException refused() {
        return new PayloadException(Messages.text("event.malformed"));
    }
}
