package org.benchwright.workshop.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;

import org.benchwright.engine.revision.RevisionFact;

/** What is signed about revisions as the ledger keeps it: a kind, and a payload of JSON. */
public final class RevisionCodec {

    private static final String SIGNATURE = "signature";

    private final TypeNames names = TypeNames.revisions();
    private final RecordCodec codec = new RecordCodec(names);
    private final JsonText json = new JsonText();

    /** The kind under which a fact is kept. */
    public String kind(RevisionFact fact) {
        return names.nameOf(fact.getClass());
    }

    /** The payload of a fact, before it is signed. */
    public String payload(RevisionFact fact) {
        return json.write(codec.fields((Record) fact));
    }

    /**
     * The fact in a signed payload.
     *
     * @throws UndecodableException if kind or payload are not what this codec writes
     */
    public RevisionFact fact(String kind, String payload) throws UndecodableException {
        Class<? extends Record> type = names.classOf(kind)
                .orElseThrow(() -> new UndecodableException("unknown kind of event \"" + kind + "\""));
        if (!(json.read(payload) instanceof ObjectNode node)) {
            throw new UndecodableException(kind + ": an object was expected");
        }
        node.remove(SIGNATURE);
        return (RevisionFact) codec.record(node, type, kind);
    }
}
