package org.benchwright.ledger.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchwright.ledger.LedgerDamagedException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteLimits;

/** The file of a projection. It may go at any time, so it is not synchronised with the disk, and a broken one is made anew. */
public final class ProjectionFile {

    /** Raised whenever a table changes: an older cache is made anew, not migrated. */
    private static final int VERSION = 4;
    private static final int APPLICATION = 0x42574647;
    private static final int PATIENCE_MILLIS = 10_000;
    private static final int LONGEST_ROW = 4 << 20;

    private static final String[] TABLES = {
        "CREATE TABLE mark (position INTEGER NOT NULL, link TEXT NOT NULL, rules INTEGER NOT NULL)",
        "CREATE TABLE test (id INTEGER PRIMARY KEY, test TEXT NOT NULL UNIQUE, opened INTEGER NOT NULL, family TEXT NOT NULL, "
                + "procedure TEXT NOT NULL, serial TEXT NOT NULL, technician TEXT NOT NULL, station TEXT NOT NULL, state INTEGER NOT NULL, "
                + "first INTEGER NOT NULL, soak_after INTEGER, soak_by INTEGER, predecessor TEXT, out_day INTEGER, back_day INTEGER, "
                + "back_fault INTEGER, again_day INTEGER, review_due INTEGER NOT NULL)",
        "CREATE TABLE reading (test INTEGER NOT NULL REFERENCES test, procedure TEXT NOT NULL, name TEXT NOT NULL, unit TEXT NOT NULL, "
                + "opened INTEGER NOT NULL, counts INTEGER NOT NULL, value REAL NOT NULL, instrument TEXT NOT NULL)",
        "CREATE TABLE cause (test INTEGER NOT NULL REFERENCES test, fault INTEGER NOT NULL, name TEXT NOT NULL, counts INTEGER NOT NULL)",
        "CREATE TABLE deviation (test INTEGER NOT NULL REFERENCES test, sequence INTEGER NOT NULL, nonconformity INTEGER NOT NULL, "
                + "stage TEXT NOT NULL, step TEXT NOT NULL, noted INTEGER NOT NULL, words TEXT NOT NULL, stand INTEGER NOT NULL, "
                + "decision TEXT, reason TEXT, decided_by TEXT, decided INTEGER)",
        // Each holds all that its figure asks for, in the order in which it is counted: nothing is sorted.
        "CREATE INDEX test_groups ON test (technician, station, state, first, opened, family, serial)",
        "CREATE INDEX test_soaks ON test (soak_after, soak_by, state, opened, family, serial)",
        "CREATE INDEX test_field ON test (back_day, again_day, procedure, out_day, back_fault, opened, family, serial) "
                + "WHERE out_day IS NOT NULL",
        "CREATE INDEX test_opened ON test (opened, state, family, serial)",
        "CREATE INDEX test_reviews ON test (opened) WHERE review_due",
        "CREATE INDEX test_before ON test (predecessor, opened) WHERE predecessor IS NOT NULL",
        "CREATE INDEX reading_series ON reading (counts, procedure, name, unit, opened)",
        "CREATE INDEX reading_test ON reading (test)",
        "CREATE INDEX cause_names ON cause (counts, fault, name, test)",
        "CREATE INDEX cause_test ON cause (test)",
        "CREATE INDEX deviation_stands ON deviation (nonconformity, stand, noted)",
        "CREATE INDEX deviation_test ON deviation (test)",
    };

    private ProjectionFile() {
    }

    /** Opens the file for writing, anew if need be, or a projection in memory where there is no writing. */
    public static Connection open(Path file) throws SQLException {
        if (!Files.isWritable(file.toAbsolutePath().getParent()) || SideFiles.hasOdd(file)
                || Files.exists(file) && !(Files.isRegularFile(file) && Files.isWritable(file))) {
            return inMemory();
        }
        try {
            Connection connection = connect("jdbc:sqlite:" + file.toAbsolutePath());
            if (made(connection)) {
                return connection;
            }
            connection.close();
        } catch (SQLException damaged) {
            if (SqliteErrors.isPlaceRefused(damaged)) {
                return inMemory();
            }
        }
        return madeAnew(file);
    }

    /**
     * Opens the file for looking at it only; nothing if there is none, or it isn't one of this release.
     *
     * @throws LedgerDamagedException if it says to be one of this release and has other tables
     */
    public static Optional<Connection> openReadOnly(Path file) throws SQLException, LedgerDamagedException {
        if (!Files.isRegularFile(file) || SideFiles.hasOdd(file)) {
            return Optional.empty();
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(PATIENCE_MILLIS);
        Connection connection = limited(config.createConnection("jdbc:sqlite:" + file.toAbsolutePath()));
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA trusted_schema = OFF");
            if (made(connection)) {
                return Optional.of(connection);
            }
            if (named(connection)) {
                connection.close();
                throw new LedgerDamagedException(Messages.text("cacheOdd", file));
            }
        } catch (SQLException noDatabase) {
            // Whoever uses it next makes it anew.
            connection.close();
            return Optional.empty();
        }
        connection.close();
        return Optional.empty();
    }

    private static Connection madeAnew(Path file) throws SQLException {
        try {
            Files.deleteIfExists(file);
        } catch (IOException held) {
            return inMemory();
        }
        Connection connection = connect("jdbc:sqlite:" + file.toAbsolutePath());
        make(connection);
        return connection;
    }

    /** An empty one that is gone when it is closed. */
    public static Connection inMemory() throws SQLException {
        Connection connection = connect("jdbc:sqlite::memory:");
        make(connection);
        return connection;
    }

    private static Connection connect(String url) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(PATIENCE_MILLIS);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        return limited(config.createConnection(url));
    }

    /** Whether the tables are those of this release. What somebody else puts in their place may never come to an end. */
    private static boolean made(Connection connection) throws SQLException {
        return named(connection) && statements(connection).equals(Stream.of(TABLES).sorted().toList());
    }

    /** Whether SQLite finds tables and indexes to be as they should and to say the same. */
    public static boolean consistent(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("PRAGMA integrity_check(1)")) {
            return row.next() && "ok".equals(row.getString(1));
        }
    }

    /** Whether it says to be a cache of this release. */
    private static boolean named(Connection connection) throws SQLException {
        return number(connection, "PRAGMA application_id") == APPLICATION && number(connection, "PRAGMA user_version") == VERSION;
    }

    private static List<String> statements(Connection connection) throws SQLException {
        List<String> found = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY sql")) {
            while (rows.next()) {
                found.add(rows.getString(1));
            }
        }
        return found;
    }

    /** No row is longer than the events that it tells of; one that is isn't read into memory. */
    private static Connection limited(Connection connection) throws SQLException {
        connection.unwrap(SQLiteConnection.class).setLimit(SQLiteLimits.SQLITE_LIMIT_LENGTH, LONGEST_ROW);
        return connection;
    }

    private static int number(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            return row.getInt(1);
        }
    }

    private static void make(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            for (String table : TABLES) {
                statement.execute(table);
            }
            statement.execute("PRAGMA application_id = " + APPLICATION);
            statement.execute("PRAGMA user_version = " + VERSION);
            statement.execute("COMMIT");
        }
    }
}
