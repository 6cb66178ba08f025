package org.benchwright.engine;

/** A fact that the test does not take where it stands; nothing has changed. The message says why, and what to do. */
public final class RefusedException extends Exception {
    private static final long serialVersionUID = 1L;

    /** @param words what was refused and what to do */
    public RefusedException(String words) {
        super(words);
    }
}
