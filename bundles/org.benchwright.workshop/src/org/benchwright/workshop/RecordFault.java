package org.benchwright.workshop;

/**
 * What is wrong in a ledger.
 *
 * @param test     the test's id; empty if the ledger as a whole is meant
 * @param sequence the event's sequence number; 0 if the whole test or ledger is meant
 * @param reason   what was found and what should have been there
 */
public record RecordFault(String test, long sequence, String reason) {

    /** The place and the reason; a reason that begins with its place has it already. */
    @Override
    public String toString() {
        String place = test + (sequence == 0 ? "" : " event " + sequence);
        return place.isEmpty() || namesItsPlace() ? reason : place.strip() + ": " + reason;
    }

    private boolean namesItsPlace() {
        int colon = reason.indexOf(": ");
        return colon > 0 && reason.substring(0, colon).contains(test + ", event " + sequence);
    }
}
