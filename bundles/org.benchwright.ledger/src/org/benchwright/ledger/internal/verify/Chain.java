package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.benchwright.core.Digest;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.Link;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.internal.EventCodec;

/** Reads all events of one test or book, of which the walk says whether they are as they were written. */
final class Chain {

    private Chain() {
    }

    static List<LedgerEntry> entries(Connection connection, TestId test) throws SQLException, PayloadException {
        List<LedgerEntry> entries = new ArrayList<>();
        String query = "SELECT position, link, canonical FROM event WHERE test_id = ? ORDER BY sequence";
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            statement.setString(1, test.value());
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    byte[] canonical = rows.getBytes(3);
                    entries.add(EventCodec.decode(canonical).at(rows.getLong(1), new Link(Digest.ofResult(rows.getBytes(2))), canonical));
                }
            }
        }
        return List.copyOf(entries);
    }
}
