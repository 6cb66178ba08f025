package org.benchwright.ledger.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.sqlite.SQLiteConfig;

/** The tables of the ledger: a short list of SQL files, one per format version, carried out in order and never changed afterwards. */
public final class Schema {

    private static final int OBJECT_COLUMNS = 5;

    /** Marks a SQLite file as a ledger: the letters "BWLG". */
    public static final int APPLICATION = 0x42574C47;

    /** The format that this release writes. */
    public static final int NEWEST = 2;

    private Schema() {
    }

    /** Brings the database from format {@code version} to {@link #NEWEST}, within the caller's transaction. */
    public static void migrate(Connection connection, int version) throws SQLException {
        migrate(connection, version, NEWEST);
    }

    private static void migrate(Connection connection, int version, int target) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (int next = version + 1; next <= target; next++) {
                for (String sql : statements(next)) {
                    statement.execute(sql);
                }
            }
            statement.execute("PRAGMA application_id = " + APPLICATION);
            statement.execute("PRAGMA user_version = " + target);
        }
    }

    /**
     * What in the database is not as {@link #migrate} made it in its format: names of tables, indexes and triggers that lack, differ or
     * were added. A ledger of an older format, opened for reading only, is as good as on its day.
     */
    public static SortedSet<String> differences(Connection connection) throws SQLException {
        List<List<String>> found = objects(connection);
        List<List<String>> wanted = Made.OBJECTS.get(Math.max(0, Math.min(version(connection), NEWEST)));
        SortedSet<String> names = new TreeSet<>();
        found.stream().filter(object -> !wanted.contains(object) || Collections.frequency(found, object) > 1)
                .forEach(object -> names.add(object.get(1)));
        wanted.stream().filter(object -> !found.contains(object)).forEach(object -> names.add(object.get(1)));
        return names;
    }

    /** What {@link #migrate} makes, by format, none first. Made once: it takes longer than to look at a small ledger. */
    private static final class Made {
        private static final List<List<List<String>>> OBJECTS = IntStream.rangeClosed(0, NEWEST).mapToObj(Made::objectsOf).toList();

        private static List<List<String>> objectsOf(int version) {
            try (Connection fresh = new SQLiteConfig().createConnection("jdbc:sqlite::memory:")) {
                migrate(fresh, 0, version);
                return List.copyOf(objects(fresh));
            } catch (SQLException impossible) {
                throw new IllegalStateException("the migrations are carried out by every test", impossible);
            }
        }
    }

    /**
     * Which tables of a ledger are none: views, or tables that a module makes up. What they come to is worked out while they are read, and may
     * never end.
     */
    public static SortedSet<String> madeUp(Connection connection) throws SQLException {
        SortedSet<String> names = new TreeSet<>();
        String sql = "SELECT name FROM sqlite_master WHERE lower(name) IN ('event', 'document', 'signer', 'checkpoint') "
                + "AND (type <> 'table' OR sql NOT LIKE 'CREATE TABLE%')";
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                names.add(rows.getString(1));
            }
        }
        return names;
    }

    private static int version(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("PRAGMA user_version")) {
            return row.getInt(1);
        }
    }

    private static List<List<String>> objects(Connection connection) throws SQLException {
        List<List<String>> objects = new ArrayList<>();
        // The planner's statistics may be added by any tool without harm; nothing else may that only has a name like theirs. Bytes that read
        // like a text are none to whoever asks for the text, so that a safeguard of that name would not be found.
        String sql = "SELECT type, name, tbl_name, sql, typeof(type) || typeof(name) || typeof(tbl_name) || typeof(sql) FROM sqlite_master "
                + "WHERE type <> 'table' OR name NOT IN ('sqlite_stat1', 'sqlite_stat3', 'sqlite_stat4')";
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                List<String> object = new ArrayList<>();
                for (int column = 1; column <= OBJECT_COLUMNS; column++) {
                    object.add(String.valueOf(rows.getString(column)));
                }
                objects.add(List.copyOf(object));
            }
        }
        return objects;
    }

    /** The statements that lead to format {@code version}. */
    static List<String> statements(int version) {
        String name = "migrations/" + version + ".sql";
        try (InputStream file = Schema.class.getResourceAsStream(name)) {
            if (file == null) {
                throw new IllegalStateException("the bundle lacks " + name);
            }
            String text = new String(file.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
            return List.of(text.strip().split("\n;(\n|$)"));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
