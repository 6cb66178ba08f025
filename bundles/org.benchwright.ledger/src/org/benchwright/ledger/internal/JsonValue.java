package org.benchwright.ledger.internal;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A JSON value as the ledger keeps it. There are no numbers: RFC 8785 would turn them into IEEE doubles and 23.90 into 23.9. */
public sealed interface JsonValue {

    /** A string, in Unicode NFC. */
    record Text(String value) implements JsonValue {
    }

    /** True or false. */
    record Flag(boolean value) implements JsonValue {
    }

    /** The JSON null. */
    record Nothing() implements JsonValue {
    }

    /** An array. */
    record Items(List<JsonValue> values) implements JsonValue {
        public Items {
            values = List.copyOf(values);
        }
    }

    /** An object. */
    record Members(Map<String, JsonValue> values) implements JsonValue {
        public Members {
            values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        }

        /** The string under {@code name}, if there is one. */
        public Optional<String> text(String name) {
            return values.get(name) instanceof Text found ? Optional.of(found.value()) : Optional.empty();
        }

        /** The object under {@code name}, if there is one. */
        public Optional<Members> members(String name) {
            return values.get(name) instanceof Members found ? Optional.of(found) : Optional.empty();
        }

        /** These members and one more, or with that one replaced. */
        public Members with(String name, JsonValue value) {
            Map<String, JsonValue> more = new LinkedHashMap<>(values);
            more.put(name, value);
            return new Members(more);
        }

        /** These members but one. */
        public Members without(String name) {
            Map<String, JsonValue> fewer = new LinkedHashMap<>(values);
            fewer.remove(name);
            return new Members(fewer);
        }
    }
}
