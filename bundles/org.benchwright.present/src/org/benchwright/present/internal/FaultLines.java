package org.benchwright.present.internal;

import java.util.List;
import java.util.stream.Stream;

import org.benchwright.engine.event.Observation;

/** The lines of a fault log as people type or paste them: each a code and what stands beside it; semicolons end a line as line breaks do. */
public final class FaultLines {

    private FaultLines() {
    }

    /** The lines that have a code; none where it is said that the log is empty. */
    public static List<Observation.FaultLine> of(String typed) {
        return isNone(typed) ? List.of() : Stream.of(typed.split("[;\\r\\n]")).map(String::strip).filter(line -> !line.isEmpty()).map(FaultLines::line).toList();
    }

    /** Whether the log is said to be empty. */
    public static boolean isNone(String typed) {
        return TypedText.isOneOf(typed, Message.WORDS_NONE);
    }

    private static Observation.FaultLine line(String text) {
        String[] words = text.split("\\s+", 2);
        return new Observation.FaultLine(words[0], words.length > 1 ? words[1] : "");
    }
}
