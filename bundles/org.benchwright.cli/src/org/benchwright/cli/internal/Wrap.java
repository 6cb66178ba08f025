package org.benchwright.cli.internal;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines. */
final class Wrap {

    private Wrap() {
    }

    /**
     * The text in lines, broken at blanks; a word longer than a line is broken where it must be. Line breaks of the text stay.
     *
     * @param first what the first line begins with
     * @param rest  what every further line begins with
     */
    static List<String> lines(String text, int width, String first, String rest) {
        List<String> lines = new ArrayList<>();
        int room = Math.max(10, width - Math.max(first.length(), rest.length()));
        for (String paragraph : text.split("\\R", -1)) {
            for (String line : broken(paragraph.strip(), room)) {
                lines.add((lines.isEmpty() ? first : rest) + line);
            }
        }
        return lines;
    }

    private static List<String> broken(String paragraph, int room) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : paragraph.split("\\s+")) {
            String left = word;
            if (!line.isEmpty() && length(line) + 1 + length(left) > room) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (length(left) > room) {
                int end = left.offsetByCodePoints(0, room);
                lines.add(left.substring(0, end));
                left = left.substring(end);
            }
            line.append(line.isEmpty() ? "" : " ").append(left);
        }
        lines.add(line.toString());
        return lines;
    }

    private static int length(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
