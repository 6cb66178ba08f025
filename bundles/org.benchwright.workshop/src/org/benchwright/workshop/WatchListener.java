package org.benchwright.workshop;

/** Hears what a watch writes down, to tell whoever is there. Called by threads of the watch; must not wait long. */
public interface WatchListener {

    /** What was written down, by how much it concerns somebody. */
    enum Kind {
        /** The unit is seen as it must be. */
        SEES,
        /** The unit cannot be seen. */
        SILENT,
        /** The unit has stopped. */
        STOPPED,
        /** The unit was not as it must be, for too short to be a stop. */
        FALTERED,
        /** A condition left its limits or came back. */
        CONDITION,
        /** The soak has done its time. */
        DONE,
        /** It cannot be watched or written down. */
        TROUBLE
    }

    /**
     * Something was written down, or could not be.
     *
     * @param test   the test's id
     * @param serial the unit's serial number
     * @param words  what, in plain words
     */
    void told(Kind kind, String test, String serial, String words);
}
