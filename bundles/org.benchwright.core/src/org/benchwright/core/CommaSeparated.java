package org.benchwright.core;

import java.util.ArrayList;
import java.util.List;

/** Comma-separated values by RFC 4180, read: quoted cells, doubled quotes in them, line ends of any kind. */
public final class CommaSeparated {

    private CommaSeparated() {
    }

    /**
     * The cells of a text, line by line; blank lines are left out. A quote that is not closed ends with the text.
     *
     * @param text a text, a byte order mark before it forgiven
     */
    public static List<List<String>> read(String text) {
        List<List<String>> lines = new ArrayList<>();
        List<String> line = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        String all = text.startsWith("\uFEFF") ? text.substring(1) : text;
        for (int i = 0; i < all.length(); i++) {
            char c = all.charAt(i);
            if (quoted) {
                if (c != '"') {
                    cell.append(c);
                } else if (i + 1 < all.length() && all.charAt(i + 1) == '"') {
                    cell.append(c);
                    i++;
                } else {
                    quoted = false;
                }
            } else if (c == '"' && cell.isEmpty()) {
                quoted = true;
            } else if (c == ',') {
                line.add(cell.toString());
                cell.setLength(0);
            } else if (c == '\n' || c == '\r') {
                end(lines, line, cell);
                line = new ArrayList<>();
            } else {
                cell.append(c);
            }
        }
        end(lines, line, cell);
        return List.copyOf(lines);
    }

    private static void end(List<List<String>> lines, List<String> line, StringBuilder cell) {
        line.add(cell.toString());
        cell.setLength(0);
        if (line.size() > 1 || !line.get(0).isBlank()) {
            lines.add(List.copyOf(line));
        }
    }
}
