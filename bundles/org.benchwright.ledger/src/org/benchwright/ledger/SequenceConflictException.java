package org.benchwright.ledger;

import org.benchwright.ledger.internal.Messages;

/** Somebody else appended to the test in the meantime: read it again, then decide again. Nothing was written. */
public class SequenceConflictException extends LedgerException {

    private static final long serialVersionUID = 1L;

    private final String test;
    private final long expected;
    private final long actual;

    public SequenceConflictException(TestId test, long expected, long actual) {
        super(Messages.text("conflict", test, expected, actual));
        this.test = test.value();
        this.expected = expected;
        this.actual = actual;
    }

    /** The test that was written to. */
    public TestId test() {
        return new TestId(test);
    }

    /** The last sequence number that the writer knew of. */
    public long expected() {
        return expected;
    }

    /** The last sequence number that the ledger holds. */
    public long actual() {
        return actual;
    }
}
