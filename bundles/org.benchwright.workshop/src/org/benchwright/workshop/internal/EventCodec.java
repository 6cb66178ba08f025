package org.benchwright.workshop.internal;

import org.benchwright.engine.event.EventBody;
import org.benchwright.engine.event.Fact;

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

    /** The fact as it will be read back: with its texts in normal form. Deciding on any other would not be repeatable. */
    public Fact asKept(Fact fact) {
        try {
            return (Fact) body(kind(fact), payload(fact));
        } catch (UndecodableException e) {
            throw new IllegalStateException("a fact does not survive writing and reading: " + fact, e);
        }
    }
}
