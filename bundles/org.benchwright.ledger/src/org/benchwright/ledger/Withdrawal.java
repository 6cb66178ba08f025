package org.benchwright.ledger;

import org.benchwright.core.Digest;

/**
 * An attachment that a signed event of a sealed test took away.
 *
 * @param test       the test
 * @param sequence   number of the event
 * @param attachment its digest, which stays
 * @param by         who signed, in print
 * @param reason     why
 * @param gone       whether nothing is left of its bytes here; if not, they are still to be taken away
 */
public record Withdrawal(TestId test, long sequence, Digest attachment, String by, String reason, boolean gone) {
}
