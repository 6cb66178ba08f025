package org.benchwright.watch;

/** The unit cannot be read; the message says in plain words what is in the way. */
public final class CannotSeeException extends Exception {

    private static final long serialVersionUID = 1L;

    /** @param words what is in the way */
    public CannotSeeException(String words) {
        super(words);
    }

    /**
     * @param words what is in the way
     * @param cause what told it
     */
    public CannotSeeException(String words, Throwable cause) {
        super(words, cause);
    }
}
