package org.benchwright.workshop.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * What people sign, as the ledger keeps it: a kind, and a payload of JSON beside the signature.
 *
 * @param <T> what is signed
 */
class SignedFacts<T> {

    private static final String SIGNATURE = "signature";

    private final TypeNames names;
    private final Class<T> type;
    private final RecordCodec codec;
    private final JsonText json = new JsonText();

    SignedFacts(TypeNames names, Class<T> type) {
        this.names = names;
        this.type = type;
        this.codec = new RecordCodec(names);
    }

    /** The kind under which a fact is kept. */
    public String kind(T fact) {
        return names.nameOf(fact.getClass());
    }

    /** Whether entries of that kind hold such facts. */
    public boolean knows(String kind) {
        return names.classOf(kind).isPresent();
    }

    /** The payload of a fact, before it is signed. */
    public String payload(T fact) {
        return json.write(codec.fields((Record) fact));
    }

    /**
     * The fact in a payload, signed or not yet.
     *
     * @throws UndecodableException if kind or payload are not what this codec writes
     */
    public T fact(String kind, String payload) throws UndecodableException {
        Class<? extends Record> found = names.classOf(kind).orElseThrow(() -> new UndecodableException("unknown kind of event \"" + kind + "\""));
        if (!(json.read(payload) instanceof ObjectNode node)) {
            throw new UndecodableException(kind + ": an object was expected");
        }
        node.remove(SIGNATURE);
        return type.cast(codec.record(node, found, kind));
    }

    /** The fact as it will be read back: with its texts in normal form. */
    public T asKept(T fact) {
        try {
            return fact(kind(fact), payload(fact));
        } catch (UndecodableException e) {
            throw new IllegalStateException("a fact does not survive writing and reading: " + fact, e);
        }
    }
}
