package org.benchwright.workshop;

/** A record that cannot be what happened: an event of it does not follow from its plan and the events before it, or can't be read. */
public final class FaultyRecordException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient RecordFault fault;

    /** @param fault what is wrong, and where */
    public FaultyRecordException(RecordFault fault) {
        super(fault.toString());
        this.fault = fault;
    }

    /** What is wrong, and where. */
    public RecordFault fault() {
        return fault;
    }
}
