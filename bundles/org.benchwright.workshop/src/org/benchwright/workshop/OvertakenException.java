package org.benchwright.workshop;

/** Somebody else wrote to the test in the meantime. Nothing was recorded; the sitting now stands where the ledger stands. */
public final class OvertakenException extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param words what happened and what to do
     * @param cause the ledger's refusal
     */
    public OvertakenException(String words, Throwable cause) {
        super(words, cause);
    }
}
