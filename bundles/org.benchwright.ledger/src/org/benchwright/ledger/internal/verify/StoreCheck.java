package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.benchwright.ledger.FaultKind;
import org.benchwright.ledger.internal.Messages;
import org.benchwright.ledger.internal.Schema;

/**
 * Looks at the database as a database. Where there is a second connection that sees the same, SQLite checks its file there, in a thread of its own,
 * while the rows are read.
 */
final class StoreCheck implements AutoCloseable {

    private static final int MOST = 20;

    private final Connection connection;
    private final Connection checking;
    private final FaultList faults = new FaultList();
    private final FutureTask<Boolean> looking = new FutureTask<>(this::file, Boolean.TRUE);
    private final Thread thread = new Thread(looking, "check of a ledger's file");

    /**
     * Begins.
     *
     * @param connection to the ledger
     * @param second     one more, if there is one, which is used by nobody else until this is closed
     */
    StoreCheck(Connection connection, Optional<Connection> second) {
        this.connection = connection;
        this.checking = second.orElse(connection);
        guarded(faults, "sqlite_master", this::schema);
        if (second.isPresent()) {
            thread.setDaemon(true);
            thread.start();
        } else {
            looking.run();
        }
    }

    private void schema() throws SQLException {
        for (String name : Schema.differences(connection)) {
            faults.add(FaultKind.SAFEGUARDS_CHANGED, "fault.safeguard", name);
        }
    }

    private void file() {
        guarded(faults, "sqlite_master", () -> {
            try (Statement statement = checking.createStatement();
                    ResultSet rows = statement.executeQuery("PRAGMA integrity_check(" + MOST + ")")) {
                while (rows.next()) {
                    String found = String.valueOf(rows.getString(1));
                    if (!found.equals("ok")) {
                        faults.add(FaultKind.STORE_DAMAGED, "fault.store", found);
                    }
                }
            }
        });
    }

    /** What was found, when all was looked at. */
    FaultList found() {
        close();
        try {
            looking.get();
            return faults;
        } catch (InterruptedException | ExecutionException failure) {
            throw new IllegalStateException(failure);
        }
    }

    /** Waits until nobody looks any more. */
    @Override
    public void close() {
        Waiting.uninterrupted(thread);
    }

    /** Does {@code part}; that a table can't be read is a fault like others. */
    static void guarded(FaultList faults, String table, Part part) {
        try {
            part.run();
        } catch (SQLException unreadable) {
            faults.add(FaultKind.TABLE_UNREADABLE, "fault.table", table, Messages.plain(unreadable));
        }
    }

    /** A part of the verification. */
    @FunctionalInterface
    interface Part {
        void run() throws SQLException;
    }
}
