package org.benchwright.present;

/** The ledger can't be read or written, or a record in it is not sound. Nothing was recorded. The message says what to do. */
public final class CannotStoreException extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param words what happened, and what to do
     * @param cause what the workshop said
     */
    public CannotStoreException(String words, Throwable cause) {
        super(words, cause);
    }
}
