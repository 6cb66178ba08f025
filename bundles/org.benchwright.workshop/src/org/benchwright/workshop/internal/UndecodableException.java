package org.benchwright.workshop.internal;

/** Stored text that is no value of the type that it should be; the message names the place and what was wrong there. */
public final class UndecodableException extends Exception {
    private static final long serialVersionUID = 1L;

    /** @param words where and what */
    public UndecodableException(String words) {
        super(words);
    }

    /**
     * @param words where and what
     * @param cause what refused it
     */
    public UndecodableException(String words, Throwable cause) {
        super(words, cause);
    }

    /** The same, told by whoever knows the place in which the place that it names is. */
    UndecodableException within(String place) {
        return new UndecodableException(place + getMessage(), getCause() == null ? this : getCause());
    }
}
