package org.benchwright.core;

import org.benchwright.core.internal.Message;

/** A text is not a length of time. The message says what is wrong with it and gives an example that would work. */
public final class DurationFormatException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;
    private static final String EXAMPLE = "2 h 30 min";

    DurationFormatException(String words) {
        super(Message.DURATION_EXAMPLE.text(words, EXAMPLE));
    }

    DurationFormatException(String words, Throwable cause) {
        super(Message.DURATION_EXAMPLE.text(words, EXAMPLE), cause);
    }

    /**
     * A text that would work.
     *
     * @return a length of time in shop words
     */
    public String example() {
        return EXAMPLE;
    }
}
