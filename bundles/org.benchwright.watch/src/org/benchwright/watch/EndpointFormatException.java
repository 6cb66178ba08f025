package org.benchwright.watch;

/** A text is no endpoint; the message says what was expected. */
public final class EndpointFormatException extends Exception {

    private static final long serialVersionUID = 1L;

    /** @param words what is wrong with it */
    public EndpointFormatException(String words) {
        super(words);
    }
}
