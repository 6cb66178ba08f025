package org.benchwright.language.internal.server;

import org.benchwright.language.internal.TextPlaces;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;

/** Places of a text as the protocol counts them: lines and UTF-16 units from 0. */
final class Lines {

    private final TextPlaces places;

    Lines(String text) {
        places = new TextPlaces(text);
    }

    Position at(int offset) {
        return new Position(places.line(offset) - 1, places.column(offset) - 1);
    }

    Range range(int offset, int length) {
        return new Range(at(offset), at(offset + length));
    }

    /** The offset of a place; places behind the end of a line count as its end, however far behind it they are. */
    int offset(Position position) {
        return places.offset(counted(position.getLine()), counted(position.getCharacter()));
    }

    /** From 1 instead of from 0, without going round at the largest number, by which editors mean the end. */
    private static int counted(int fromZero) {
        return Math.min(fromZero, Integer.MAX_VALUE - 1) + 1;
    }
}
