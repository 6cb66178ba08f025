package org.benchwright.ledger.tests;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Counts rows over an open connection. */
final class Counting {

    private Counting() {
    }

    static long events(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("SELECT count(*) FROM event")) {
            return row.getLong(1);
        }
    }
}
