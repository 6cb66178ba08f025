package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import org.benchwright.ledger.LedgerException;

/**
 * Statements that every append carries out, prepared once: SQLite takes longer to understand an insert with its safeguards than to do it. They go
 * with the connection that asked last, which closes them with itself, and are used by the one thread that has the connection.
 */
final class KeptStatements {

    private final Map<String, PreparedStatement> statements = new HashMap<>();

    /** What is done with a statement, whose result is closed before this ends. */
    @FunctionalInterface
    interface Use<T> {
        T of(PreparedStatement statement) throws SQLException, LedgerException;
    }

    /** Uses the statement of that text. One that fails is not used again, for it may stand where it failed. */
    <T> T use(Connection connection, String sql, Use<T> use) throws SQLException, LedgerException {
        PreparedStatement statement = statement(connection, sql);
        try {
            return use.of(statement);
        } catch (SQLException | LedgerException | RuntimeException failure) {
            statements.remove(sql);
            close(statement, failure);
            throw failure;
        }
    }

    private PreparedStatement statement(Connection connection, String sql) throws SQLException {
        PreparedStatement known = statements.get(sql);
        if (known != null && known.getConnection() == connection) {
            return known;
        }
        PreparedStatement fresh = connection.prepareStatement(sql);
        statements.put(sql, fresh);
        return fresh;
    }

    private static void close(PreparedStatement statement, Exception failure) {
        try {
            statement.close();
        } catch (SQLException second) {
            failure.addSuppressed(second);
        }
    }
}
