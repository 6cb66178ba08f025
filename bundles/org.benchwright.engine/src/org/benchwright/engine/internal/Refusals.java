package org.benchwright.engine.internal;

import org.benchwright.engine.RefusedException;

/** How a rule refuses, in the words of a record. */
public final class Refusals {

    private Refusals() {
    }

    /**
     * Refuses unless it is fine.
     *
     * @param key       of the words that say why, and what to do
     * @param arguments what is put into them
     * @throws RefusedException if it is not fine
     */
    public static void require(boolean fine, String key, Object... arguments) throws RefusedException {
        if (!fine) {
            throw refused(key, arguments);
        }
    }

    /** A refusal in those words. */
    public static RefusedException refused(String key, Object... arguments) {
        return new RefusedException(Words.of(key, arguments));
    }
}
