package org.benchwright.ledger.tests;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Asks for one number over an open connection, of whatever database. */
final class Counting {

    private Counting() {
    }

    static long number(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    static long events(Connection connection) throws SQLException {
        return number(connection, "SELECT count(*) FROM event");
    }
}
