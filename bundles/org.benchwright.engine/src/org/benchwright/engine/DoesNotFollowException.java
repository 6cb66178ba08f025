package org.benchwright.engine;

/** An event in a record that does not follow from the events before it under the rules of its plan. */
public final class DoesNotFollowException extends Exception {
    private static final long serialVersionUID = 1L;

    private final long sequence;

    /**
     * @param sequence the event's sequence number
     * @param words    what was found and what should have been there
     */
    public DoesNotFollowException(long sequence, String words) {
        super(words);
        this.sequence = sequence;
    }

    /** The sequence number of the event that does not follow. */
    public long sequence() {
        return sequence;
    }
}
