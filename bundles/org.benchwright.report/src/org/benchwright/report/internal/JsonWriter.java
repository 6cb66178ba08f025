package org.benchwright.report.internal;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;

/** Writes JSON, indented. */
final class JsonWriter {

    private final StringBuilder text = new StringBuilder();
    private int depth;
    private boolean first = true;

    String text() {
        return text + "\n";
    }

    void object(Runnable members) {
        within('{', members, '}');
    }

    void member(String name, String value) {
        name(name);
        text.append(quoted(value));
    }

    void flag(String name, boolean value) {
        name(name);
        text.append(value);
    }

    void texts(String name, List<String> values) {
        list(name, values, value -> text.append(quoted(value)));
    }

    <T> void list(String name, List<T> items, Consumer<T> item) {
        name(name);
        within('[', () -> {
            for (T each : items) {
                next();
                item.accept(each);
                first = false;
            }
        }, ']');
    }

    private void name(String name) {
        next();
        text.append(quoted(name)).append(": ");
    }

    private void next() {
        text.append(first ? "\n" : ",\n").append("  ".repeat(depth));
        first = false;
    }

    private void within(char open, Runnable content, char close) {
        text.append(open);
        depth++;
        first = true;
        content.run();
        depth--;
        if (!first) {
            text.append('\n').append("  ".repeat(depth));
        }
        text.append(close);
        first = false;
    }

    private static String quoted(String value) {
        StringBuilder quoted = new StringBuilder("\"");
        value.chars().forEach(unit -> {
            switch (unit) {
                case '"' -> quoted.append("\\\"");
                case '\\' -> quoted.append("\\\\");
                case '\n' -> quoted.append("\\n");
                default -> {
                    if (unit < ' ' || Character.isSurrogate((char) unit) && !wellFormed(value)) {
                        quoted.append(String.format("\\u%04x", unit));
                    } else {
                        quoted.append((char) unit);
                    }
                }
            }
        });
        return quoted.append('"').toString();
    }

    /** Half a character has no UTF-8 and is escaped. */
    private static boolean wellFormed(String value) {
        return StandardCharsets.UTF_8.newEncoder().canEncode(value);
    }
}
