package org.benchwright.present;

/** What was entered is not taken; nothing has changed. The message says why, and what to do. */
public final class EntryRefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    /** @param words why, and what to do */
    public EntryRefusedException(String words) {
        super(words);
    }

    /**
     * @param words why, and what to do
     * @param cause what refused it
     */
    public EntryRefusedException(String words, Throwable cause) {
        super(words, cause);
    }
}
