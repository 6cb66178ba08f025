package org.benchwright.workshop.tests;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

import org.sqlite.SQLiteConfig;

/** The database driver alone, as durable as the ledger: what bytes cost to keep, to measure the ledger beside. */
public final class BareStore implements AutoCloseable {

    private final Connection connection;

    /** @param file where it is made */
    public BareStore(Path file) throws SQLException {
        connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + file);
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            statement.execute("PRAGMA synchronous = FULL");
            statement.execute("CREATE TABLE bare (content BLOB NOT NULL)");
        }
    }

    /** Keeps these bytes in one transaction, a row for each; durable when this returns. */
    public void keep(List<byte[]> rows) throws SQLException {
        connection.setAutoCommit(false);
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO bare (content) VALUES (?)")) {
            for (byte[] row : rows) {
                insert.setBytes(1, row);
                insert.executeUpdate();
            }
        }
        connection.commit();
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
