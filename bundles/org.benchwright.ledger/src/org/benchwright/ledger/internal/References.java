package org.benchwright.ledger.internal;

import java.util.ArrayList;
import java.util.List;
import org.benchwright.core.Digest;
import org.benchwright.ledger.DocumentReference;
import org.benchwright.ledger.PayloadException;

/** The documents that a payload names. */
public final class References {

    private References() {
    }

    /** All of them, in the order of the payload. */
    public static List<Digest> in(JsonValue payload) {
        List<Digest> found = new ArrayList<>();
        collect(payload, found);
        return found;
    }

    /** Those in the JSON text of a payload. */
    public static List<Digest> in(String payload) throws PayloadException {
        return in(CanonicalJson.parse(payload));
    }

    private static void collect(JsonValue value, List<Digest> found) {
        if (value instanceof JsonValue.Text text) {
            DocumentReference.parse(text.value()).ifPresent(found::add);
        } else if (value instanceof JsonValue.Items items) {
            items.values().forEach(item -> collect(item, found));
        } else if (value instanceof JsonValue.Members members) {
            members.values().values().forEach(member -> collect(member, found));
        }
    }
}
