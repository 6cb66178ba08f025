package org.benchwright.ledger.tests;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** Somebody with the ledger's file and SQL. */
final class Tamper implements AutoCloseable {

    private final Connection connection;

    private Tamper(Connection connection) {
        this.connection = connection;
    }

    static Tamper with(Path ledger) throws SQLException {
        // An attacker doesn't care for power cuts, and the tests are quicker.
        return new Tamper(new SQLiteConfig().createConnection("jdbc:sqlite:" + ledger)).run("PRAGMA synchronous = OFF");
    }

    /** Takes the triggers away, does the work, and puts the triggers back, so that only the work itself can be found. */
    Tamper behindTheTriggers(Work work) throws SQLException {
        List<String[]> triggers = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")) {
            while (rows.next()) {
                triggers.add(new String[] {rows.getString(1), rows.getString(2)});
            }
        }
        run("PRAGMA ignore_check_constraints = ON");
        run("PRAGMA foreign_keys = OFF");
        run("BEGIN");
        for (String[] trigger : triggers) {
            run("DROP TRIGGER " + trigger[0]);
        }
        work.run(this);
        for (String[] trigger : triggers) {
            run(trigger[1]);
        }
        run("COMMIT");
        return this;
    }

    Tamper run(String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.execute();
        }
        return this;
    }

    byte[] bytes(String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            return row.getBytes(1);
        }
    }

    Connection connection() {
        return connection;
    }

    long number(String sql) throws SQLException {
        return Counting.number(connection, sql);
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }

    @FunctionalInterface
    interface Work {
        void run(Tamper tamper) throws SQLException;
    }
}
