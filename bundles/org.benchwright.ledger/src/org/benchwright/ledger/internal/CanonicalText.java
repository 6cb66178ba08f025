package org.benchwright.ledger.internal;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import org.benchwright.ledger.internal.JsonValue.Flag;
import org.benchwright.ledger.internal.JsonValue.Items;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;

/**
 * Writes the canonical form (RFC 8785) of values without numbers: no blanks, members in the order of their names' UTF-16 units (3.2.3),
 * texts with the shortest escapes (3.2.2.2). The hard part of the standard, numbers, never comes up here. What is appended or signed
 * is written here; that what is read is in this form is for {@link CanonicalReader} to see.
 */
final class CanonicalText {

    private static final String HEX = "0123456789abcdef";

    private final StringBuilder text = new StringBuilder(512);

    private CanonicalText() {
    }

    /** The canonical bytes of {@code value}. */
    static byte[] bytes(JsonValue value) {
        CanonicalText canonical = new CanonicalText();
        canonical.write(value);
        return canonical.text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void write(JsonValue value) {
        if (value instanceof Text string) {
            quote(string.value());
        } else if (value instanceof Flag flag) {
            text.append(flag.value());
        } else if (value instanceof Items items) {
            text.append('[');
            for (int i = 0; i < items.values().size(); i++) {
                separate(i);
                write(items.values().get(i));
            }
            text.append(']');
        } else if (value instanceof Members members) {
            write(members);
        } else {
            text.append("null");
        }
    }

    private void write(Members members) {
        text.append('{');
        int i = 0;
        Map<String, JsonValue> values = ordered(members.values()) ? members.values() : new TreeMap<>(members.values());
        for (Map.Entry<String, JsonValue> member : values.entrySet()) {
            separate(i++);
            quote(member.getKey());
            text.append(':');
            write(member.getValue());
        }
        text.append('}');
    }

    /** What was read in canonical form comes in order already. */
    private static boolean ordered(Map<String, JsonValue> values) {
        String before = "";
        for (String name : values.keySet()) {
            if (before.compareTo(name) > 0) {
                return false;
            }
            before = name;
        }
        return true;
    }

    private void separate(int before) {
        if (before > 0) {
            text.append(',');
        }
    }

    private void quote(String value) {
        text.append('"');
        for (int i = 0; i < value.length(); i++) {
            char unit = value.charAt(i);
            if (unit >= ' ' && unit != '"' && unit != '\\') {
                text.append(unit);
            } else {
                escape(unit);
            }
        }
        text.append('"');
    }

    private void escape(char unit) {
        text.append('\\');
        switch (unit) {
            case '"', '\\' -> text.append(unit);
            case '\b' -> text.append('b');
            case '\t' -> text.append('t');
            case '\n' -> text.append('n');
            case '\f' -> text.append('f');
            case '\r' -> text.append('r');
            default -> text.append("u00").append(HEX.charAt(unit >> 4)).append(HEX.charAt(unit & 0xF));
        }
    }
}
