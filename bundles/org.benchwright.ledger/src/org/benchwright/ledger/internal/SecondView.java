package org.benchwright.ledger.internal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.benchwright.ledger.LedgerException;

/**
 * A second connection to a ledger's file that sees the very same state as the first, so that another thread can look at it meanwhile. SQLite can't
 * be asked for that. But it tells a connection whether others have committed since it asked last: when nobody did from before the first one's view
 * began until after the second one's did, both views are one.
 */
public final class SecondView implements AutoCloseable {

    private final Optional<Connection> connection;
    private final long before;
    private final Path path;

    private SecondView(Path path, Optional<Connection> connection, long before) {
        this.path = path;
        this.connection = connection;
        this.before = before;
    }

    /** Over a connection of its own to the ledger at {@code path}, before the first one's view begins. */
    public static SecondView over(Path path, Connection connection) throws SQLException {
        return new SecondView(path, Optional.of(connection), changes(connection));
    }

    /** Where no second connection can be had. */
    static SecondView none(Path path) {
        return new SecondView(path, Optional.empty(), 0);
    }

    /** This connection, if what it sees from now on until it is closed is what {@code first} sees in its transaction. */
    public Optional<Connection> beside(Connection first) {
        return connection.filter(second -> {
            try (Statement looking = first.createStatement(); Statement statement = second.createStatement()) {
                // A transaction's view begins when it reads for the first time.
                looking.executeQuery("SELECT count(*) FROM sqlite_master").close();
                statement.execute("BEGIN");
                return changes(second) == before;
            } catch (SQLException unreadable) {
                return false;
            }
        });
    }

    private static long changes(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("PRAGMA data_version")) {
            return row.getLong(1);
        }
    }

    @Override
    public void close() throws LedgerException {
        try {
            if (connection.isPresent()) {
                connection.get().close();
            }
        } catch (SQLException failure) {
            throw SqliteErrors.translate(failure, path);
        }
    }
}
