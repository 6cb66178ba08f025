package org.benchwright.workshop;

/** The ledger can't be read or written. Nothing was recorded; the message says what to do. */
public final class StoreException extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param words what happened and what to do
     * @param cause what the store said
     */
    public StoreException(String words, Throwable cause) {
        super(words, cause);
    }
}
