package org.benchwright.workshop.internal;

import java.util.Optional;

import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;
import org.benchwright.ledger.LedgerEntry;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Bodies of events as the ledger keeps them: a kind, and a payload of JSON. */
public final class EventCodec {

    private static final String SIGNATURE = "signature";

    private final TypeNames names = TypeNames.events();
    private final RecordCodec codec = new RecordCodec(names);
    private final JsonText json = new JsonText();

    /** The kind under which a body is kept. */
    public String kind(EventBody body) {
        return names.nameOf(body.getClass());
    }

    /** The payload of a body. */
    public String payload(EventBody body) {
        return json.write(codec.fields((Record) body));
    }

    /**
     * The body.
     *
     * @throws UndecodableException if kind or payload are not what this codec writes
     */
    public EventBody body(String kind, String payload) throws UndecodableException {
        Class<? extends Record> type = names.classOf(kind)
                .orElseThrow(() -> new UndecodableException("unknown kind of event \"" + kind + "\""));
        JsonNode node = json.read(payload);
        if (type == Fact.Released.class && node instanceof ObjectNode release) {
            // Whoever has a key signs the release; whose signature it is, verification asks.
            release.remove(SIGNATURE);
        }
        return (EventBody) codec.record(node, type, kind);
    }

    /** What an entry says; empty if it can't be read, which verification tells of, and which must not stand in the way of other work. */
    public Optional<EventBody> readable(LedgerEntry entry) {
        try {
            return Optional.of(body(entry.kind(), entry.payload()));
        } catch (UndecodableException unreadable) {
            return Optional.empty();
        }
    }

    /** How a test was opened, as its first event says; empty if that can't be read, or is another. */
    public Optional<Fact.Opened> opened(LedgerEntry first) {
        return readable(first).filter(Fact.Opened.class::isInstance).map(Fact.Opened.class::cast);
    }

    /** The fact as it will be read back: with its texts in normal form. Deciding on any other would not be repeatable. */
    public Fact asKept(Fact fact) {
        try {
            return (Fact) body(kind(fact), payload(fact));
        } catch (UndecodableException e) {
            throw new IllegalStateException("a fact does not survive writing and reading: " + fact, e);
        }
    }
}
