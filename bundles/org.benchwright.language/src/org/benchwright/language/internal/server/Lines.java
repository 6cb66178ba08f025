package org.benchwright.language.internal.server;

import org.benchwright.language.internal.TextPlaces;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;

/** Places of a text as the protocol counts them: lines and UTF-16 units from 0. */
final class Lines {

    private final String text;
    private final TextPlaces places;

    Lines(String text) {
        this.text = text;
        places = new TextPlaces(text);
    }

    Position at(int offset) {
        return new Position(places.line(offset) - 1, places.column(offset) - 1);
    }

    Range range(int offset, int length) {
        return new Range(at(offset), at(offset + length));
    }

    /** The offset of a place; places behind the end of a line count as its end. */
    int offset(Position position) {
        int from = 0;
        for (int line = 0; line < position.getLine(); line++) {
            int end = text.indexOf('\n', from);
            if (end < 0) {
                return text.length();
            }
            from = end + 1;
        }
        int end = text.indexOf('\n', from);
        return Math.min(from + position.getCharacter(), end < 0 ? text.length() : end);
    }
}
