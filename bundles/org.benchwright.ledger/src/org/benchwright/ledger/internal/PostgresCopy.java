package org.benchwright.ledger.internal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import org.benchwright.ledger.LedgerDamagedException;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerOptions;

/** Rows from one database to the other, byte by byte; the target's own safeguards look at each. */
public final class PostgresCopy {

    private static final int PAGE = 256;

    private record Table(String name, int columns) {
    }

    private PostgresCopy() {
    }

    /** Copies all rows into the empty ledger at {@code file}. */
    public static void rows(Connection source, Path file) throws SQLException, LedgerException {
        try (SqliteFile target = SqliteFile.openOrCreate(file, LedgerOptions.standard())) {
            target.write(into -> {
                for (Table table : new Table[] {new Table("event", 12), new Table("document", 6), new Table("signer", 5),
                    new Table("checkpoint", 8)}) {
                    copy(source, into, table);
                }
                return Boolean.TRUE;
            });
        }
    }

    private static void copy(Connection source, Connection into, Table table) throws SQLException, LedgerException {
        String places = String.join(", ", Collections.nCopies(table.columns(), "?"));
        try (Statement query = source.createStatement();
                PreparedStatement insert = into.prepareStatement("INSERT INTO " + table.name() + " VALUES (" + places + ")")) {
            // The driver reads page by page then, and memory stays flat.
            query.setFetchSize(PAGE);
            try (ResultSet rows = query.executeQuery("SELECT * FROM " + table.name() + " ORDER BY 1")) {
                while (rows.next()) {
                    for (int i = 1; i <= table.columns(); i++) {
                        insert.setObject(i, rows.getObject(i));
                    }
                    insert(insert, table.name(), rows.getLong(1));
                }
            }
        }
    }

    private static void insert(PreparedStatement insert, String table, long row) throws LedgerException {
        try {
            insert.executeUpdate();
        } catch (SQLException refused) {
            throw new LedgerDamagedException(Messages.text("copyRefused", table, row, refused.getMessage()), refused);
        }
    }
}
