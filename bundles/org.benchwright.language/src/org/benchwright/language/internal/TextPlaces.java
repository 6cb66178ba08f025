package org.benchwright.language.internal;

import java.util.Arrays;

/** Lines and columns of a text, both from 1. Lines end with CR LF, LF or CR. */
public final class TextPlaces {

    private final int[] lineStarts;
    private final int length;

    /** Finds the lines of a text. */
    public TextPlaces(String text) {
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
        length = text.length();
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

    private int within(int offset) {
        return Math.max(0, Math.min(offset, length));
    }
}
