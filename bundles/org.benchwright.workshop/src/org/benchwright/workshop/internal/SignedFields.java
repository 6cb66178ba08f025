package org.benchwright.workshop.internal;

import java.util.Iterator;
import java.util.Set;

import com.fasterxml.jackson.databind.node.ObjectNode;

/** What stands in a signed payload beside the signature. */
final class SignedFields {

    private static final String SIGNATURE = "signature";

    private SignedFields() {
    }

    /**
     * The fields of a payload.
     *
     * @param names those that may stand in it; nobody would look at another, and it would be signed all the same
     * @throws UndecodableException if it is no object, or has another field
     */
    static ObjectNode of(String payload, Set<String> names) throws UndecodableException {
        if (!(new JsonText().read(payload) instanceof ObjectNode node)) {
            throw new UndecodableException("an object was expected");
        }
        node.remove(SIGNATURE);
        for (Iterator<String> fields = node.fieldNames(); fields.hasNext();) {
            String field = fields.next();
            if (!names.contains(field)) {
                throw new UndecodableException("unknown field \"" + field + "\"");
            }
        }
        return node;
    }
}
