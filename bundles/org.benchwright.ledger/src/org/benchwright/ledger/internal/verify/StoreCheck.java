package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.Schema;

/**
 * Looks at the database as a database.
 *
 * @param connection to the ledger
 * @param faults     where to put what is found
 */
record StoreCheck(Connection connection, FaultList faults) {

    private static final int MOST = 20;

    void run() throws SQLException {
        for (String name : Schema.differences(connection)) {
            faults.add(FaultKind.SAFEGUARDS_CHANGED, "fault.safeguard", name);
        }
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA integrity_check(" + MOST + ")")) {
            while (rows.next()) {
                String found = String.valueOf(rows.getString(1));
                if (!found.equals("ok")) {
                    faults.add(FaultKind.STORE_DAMAGED, "fault.store", found);
                }
            }
        }
    }

    /** Does {@code part}; that a table can't be read is a fault like others. */
    static void guarded(FaultList faults, String table, Part part) {
        try {
            part.run();
        } catch (SQLException unreadable) {
            faults.add(FaultKind.TABLE_UNREADABLE, "fault.table", table, Messages.plain(unreadable));
        }
    }

    /** A part of the verification. */
    @FunctionalInterface
    interface Part {
        void run() throws SQLException;
    }
}
