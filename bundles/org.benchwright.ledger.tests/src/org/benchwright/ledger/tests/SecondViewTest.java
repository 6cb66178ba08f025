package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.benchwright.ledger.internal.SecondView;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.SQLiteConfig;

/** A second connection is handed out only when it sees what the first sees, however others write meanwhile. */
class SecondViewTest {

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void make() {
        file = folder.resolve("some.db");
    }

    private Connection open() throws SQLException {
        return new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
    }

    private static void execute(Connection connection, String... all) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String sql : all) {
                statement.execute(sql);
            }
        }
    }

    private static long count(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery("SELECT count(*) FROM thing")) {
            return row.getLong(1);
        }
    }

    private Connection writer(String mode) throws SQLException {
        Connection writer = open();
        execute(writer, "PRAGMA journal_mode = " + mode, "CREATE TABLE thing (number)", "INSERT INTO thing VALUES (1)");
        return writer;
    }

    @ParameterizedTest
    @ValueSource(strings = {"WAL", "DELETE"})
    void bothSeeTheSameWhenNobodyWrites(String mode) throws Exception {
        try (Connection writer = writer(mode); Connection first = open(); SecondView view = SecondView.over(file, open())) {
            execute(first, "BEGIN");
            assertEquals(1, count(view.beside(first).orElseThrow()));
            assertEquals(1, count(first));
        }
    }

    @Test
    void whatIsWrittenAfterwardsNeitherSees() throws Exception {
        try (Connection writer = writer("WAL"); Connection first = open(); SecondView view = SecondView.over(file, open())) {
            execute(first, "BEGIN");
            Connection second = view.beside(first).orElseThrow();
            execute(writer, "INSERT INTO thing VALUES (2)");
            assertEquals(1, count(first));
            assertEquals(1, count(second));
        }
    }

    @Test
    void noneIsHandedOutWhenSomebodyWroteAfterTheFirstBegan() throws Exception {
        try (Connection writer = writer("WAL"); Connection first = open(); SecondView view = SecondView.over(file, open())) {
            execute(first, "BEGIN");
            assertEquals(1, count(first));
            execute(writer, "INSERT INTO thing VALUES (2)");
            assertEquals(Optional.empty(), view.beside(first));
            assertEquals(1, count(first));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"WAL", "DELETE"})
    void noneIsHandedOutWhenSomebodyWroteBeforeTheFirstBegan(String mode) throws Exception {
        try (Connection writer = writer(mode); Connection first = open(); SecondView view = SecondView.over(file, open())) {
            execute(writer, "INSERT INTO thing VALUES (2)");
            execute(first, "BEGIN");
            assertTrue(view.beside(first).isEmpty());
            assertEquals(2, count(first));
        }
    }
}
