package org.benchwright.present;

/** Somebody else wrote to the test meanwhile. What was entered here is not recorded; the test stands where they have brought it. */
public final class TakenElsewhereException extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param words what happened, and what to do
     * @param cause what the workshop said
     */
    public TakenElsewhereException(String words, Throwable cause) {
        super(words, cause);
    }
}
