package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.SQLException;
import org.benchwright.ledger.LedgerException;

/** Work within one transaction. */
@FunctionalInterface
public interface SqlWork<T> {

    /** Does the work; any exception rolls it back. */
    T run(Connection connection) throws SQLException, LedgerException;
}
