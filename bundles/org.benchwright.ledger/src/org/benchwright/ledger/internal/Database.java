package org.benchwright.ledger.internal;

import org.benchwright.ledger.LedgerException;

/** A connection to a ledger's tables, wherever they are. */
public interface Database extends AutoCloseable {

    /** Does {@code work} in one transaction, alone among writers, that is durable when this returns. */
    <T> T write(SqlWork<T> work) throws LedgerException;

    /** Does {@code work} on one unchanging view of the ledger. */
    <T> T read(SqlWork<T> work) throws LedgerException;

    @Override
    void close() throws LedgerException;
}
