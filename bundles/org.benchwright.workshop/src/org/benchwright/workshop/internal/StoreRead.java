package org.benchwright.workshop.internal;

import org.benchwright.ledger.LedgerException;
import org.benchwright.workshop.StoreException;

/**
 * Something that is read of a ledger; that it can't be read is told in this room's own exception, with the same words.
 *
 * @param <T> what comes out
 */
@FunctionalInterface
public interface StoreRead<T> {

    /** Reads it. */
    T done() throws LedgerException;

    /** What the reading comes to. */
    static <T> T of(StoreRead<T> reading) throws StoreException {
        try {
            return reading.done();
        } catch (LedgerException e) {
            throw new StoreException(e.getMessage(), e);
        }
    }
}
