package org.benchwright.ledger.internal;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerFormatException;
import org.benchwright.ledger.LedgerVersionException;
import org.postgresql.Driver;

/** One connection to a ledger that several benches share. Writers take turns by a lock that ends with their transaction. */
public final class PostgresDatabase implements Database {

    private static final long WRITERS = Schema.APPLICATION;

    private final Connection connection;
    private final String place;

    private PostgresDatabase(Connection connection, String place) {
        this.connection = connection;
        this.place = place;
    }

    /** Opens a ledger that is there. */
    public static PostgresDatabase open(String url, Properties login) throws LedgerException {
        String place = place(url);
        try {
            Connection connection = connect(url, login);
            try {
                int version = PostgresSchema.version(connection);
                if (version == 0) {
                    throw new LedgerFormatException(Messages.text("notALedger", place));
                }
                if (version > Schema.NEWEST) {
                    throw new LedgerVersionException(Messages.text("newer", place, version, Schema.NEWEST));
                }
                if (version < Schema.NEWEST) {
                    throw new LedgerVersionException(Messages.text("older", place, version, Schema.NEWEST));
                }
                connection.commit();
                return new PostgresDatabase(connection, place);
            } catch (SQLException | LedgerException failure) {
                connection.close();
                throw failure;
            }
        } catch (SQLException failure) {
            throw PostgresErrors.translate(failure, place);
        }
    }

    /** Connects without auto-commit. */
    public static Connection connect(String url, Properties login) throws SQLException {
        // Asked directly: a registry of drivers is a matter of class loaders.
        Connection connection = new Driver().connect(url, login);
        if (connection == null) {
            throw new SQLException("not the address of a PostgreSQL database", "08001");
        }
        connection.setAutoCommit(false);
        return connection;
    }

    /** What {@code failure} means to whoever works with the ledger at {@code url}. */
    public static LedgerException translated(SQLException failure, String url) {
        return PostgresErrors.translate(failure, place(url));
    }

    /** The address without what may be secret behind the question mark. */
    public static String place(String url) {
        return url.replaceFirst("\\?.*$", "");
    }

    /** Where the ledger is, for messages. */
    public String place() {
        return place;
    }

    @Override
    public synchronized <T> T write(SqlWork<T> work) throws LedgerException {
        return translated("SET TRANSACTION ISOLATION LEVEL READ COMMITTED", "SELECT pg_advisory_xact_lock(" + WRITERS + ")", work);
    }

    @Override
    public synchronized <T> T read(SqlWork<T> work) throws LedgerException {
        return translated("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY", "SELECT 1", work);
    }

    private <T> T translated(String isolation, String begin, SqlWork<T> work) throws LedgerException {
        try (Statement statement = connection.createStatement()) {
            try {
                statement.execute(isolation);
                statement.execute(begin);
                T result = work.run(connection);
                connection.commit();
                return result;
            } catch (SQLException | LedgerException | RuntimeException failure) {
                rollBack(failure);
                throw failure;
            }
        } catch (SQLException failure) {
            throw PostgresErrors.translate(failure, place);
        }
    }

    private void rollBack(Exception failure) {
        try {
            connection.rollback();
        } catch (SQLException alreadyGone) {
            failure.addSuppressed(alreadyGone);
        }
    }

    @Override
    public synchronized void close() throws LedgerException {
        try {
            connection.close();
        } catch (SQLException failure) {
            throw PostgresErrors.translate(failure, place);
        }
    }
}
