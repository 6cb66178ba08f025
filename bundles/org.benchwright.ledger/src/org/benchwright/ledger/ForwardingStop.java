package org.benchwright.ledger;

import java.util.Objects;

/**
 * A test that is not forwarded any further; all others go on.
 *
 * @param test     the test
 * @param sequence number of the event that can't be forwarded
 * @param words    why, and what to do
 */
public record ForwardingStop(TestId test, long sequence, String words) {

    public ForwardingStop {
        Objects.requireNonNull(test);
        Objects.requireNonNull(words);
    }
}
