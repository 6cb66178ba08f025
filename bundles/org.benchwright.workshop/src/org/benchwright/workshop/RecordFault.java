package org.benchwright.workshop;

/**
 * What is wrong in a record.
 *
 * @param test     the test's id
 * @param sequence the event's sequence number; 0 if the whole test is meant
 * @param kind     the event's kind; empty if the whole test is meant
 * @param reason   what was found and what should have been there
 */
public record RecordFault(String test, long sequence, String kind, String reason) {

    @Override
    public String toString() {
        return sequence == 0 ? test + ": " + reason : test + " event " + sequence + " " + kind + ": " + reason;
    }
}
