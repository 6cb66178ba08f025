package org.benchwright.language.internal;

import java.util.Arrays;

/** Lines and columns of a text, both from 1. Lines end with CR LF, LF or CR. */
public final class TextPlaces {

    private final String text;
    private final int[] lineStarts;

    /** Finds the lines of a text. */
    public TextPlaces(String text) {
        this.text = text;
        int[] starts = new int[16];
        int count = 1;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean ends = c == '\n' || c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n');
            if (ends) {
                if (count == starts.length) {
                    starts = Arrays.copyOf(starts, 2 * count);
                }
                starts[count] = i + 1;
                count++;
            }
        }
        lineStarts = Arrays.copyOf(starts, count);
    }

    /** What ends the lines of a text: CR LF if it ends any, else LF. */
    public static String lineEnd(String text) {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }

    /** The blanks that the line of a place begins with. */
    public String indentation(int offset) {
        String line = text.substring(lineStarts[line(offset) - 1], within(offset));
        return line.substring(0, line.length() - line.stripLeading().length());
    }

    /** The line of a place, places behind the end counting as the end. */
    public int line(int offset) {
        int found = Arrays.binarySearch(lineStarts, within(offset));
        return found >= 0 ? found + 1 : -found - 1;
    }

    /** The column of a place in its line. */
    public int column(int offset) {
        int place = within(offset);
        return place - lineStarts[line(place) - 1] + 1;
    }

    /** The place at a line and a column: places behind the end of a line count as its end, lines behind the end as the end of the text. */
    public int offset(int line, int column) {
        if (line > lineStarts.length) {
            return text.length();
        }
        int start = lineStarts[Math.max(1, line) - 1];
        return start + Math.min(Math.max(1, column) - 1, end(Math.max(1, line)) - start);
    }

    /** Where a line ends, what ends it not included. */
    private int end(int line) {
        int end = line < lineStarts.length ? lineStarts[line] : text.length();
        while (end > lineStarts[line - 1] && (text.charAt(end - 1) == '\n' || text.charAt(end - 1) == '\r')) {
            end--;
        }
        return end;
    }

    private int within(int offset) {
        return Math.max(0, Math.min(offset, text.length()));
    }
}
