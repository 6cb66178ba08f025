package org.benchwright.ledger.internal.verify;

import org.benchwright.ledger.Link;
import org.benchwright.ledger.TestId;

/**
 * How far the walk has come in one test.
 *
 * @param sequence number of its last event, 0 before the first
 * @param link     link of that event
 * @param sealed   whether a seal was met
 * @param clean    whether no fault was met
 */
public record TestPoint(long sequence, Link link, boolean sealed, boolean clean) {

    /** Before the first event of {@code test}. */
    public static TestPoint before(TestId test) {
        return new TestPoint(0, Link.before(test), false, true);
    }

    /** The same, with a fault met. */
    public TestPoint faulty() {
        return new TestPoint(sequence, link, sealed, false);
    }
}
