package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.benchwright.ledger.internal.verify.Cell;
import org.benchwright.ledger.internal.verify.EventRow;
import org.benchwright.ledger.internal.verify.PackedRow;
import org.benchwright.ledger.internal.verify.StoredRow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteConfig;

/** Rows as the database hands them out: packed when every cell is what it usually is, else cell by cell with the type that is stored. */
class StoredRowTest {

    private static final String DIGEST = "zeroblob(32)";

    private Connection connection;

    @BeforeEach
    void table() throws SQLException {
        connection = new SQLiteConfig().createConnection("jdbc:sqlite::memory:");
        // Without types, so that everything can stand everywhere, as in a file that somebody else wrote.
        execute("CREATE TABLE event (position INTEGER PRIMARY KEY, test_id, sequence, instant, sitting, elapsed, actor, role, kind, link, subtree, canonical)");
        execute("INSERT INTO event VALUES (7, 'T-4K7M2-QXD9R', 3, '2026-03-02T07:30:00Z', 1, 'PT1.5S', 'QN', 'technician', 'observed', "
                + DIGEST + ", " + DIGEST + ", x'7B7D')");
    }

    @AfterEach
    void close() throws SQLException {
        connection.close();
    }

    private void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static Cell text(String value) {
        return new Cell("text", value.getBytes(StandardCharsets.US_ASCII));
    }

    private StoredRow row() throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet rows = statement.executeQuery(StoredRow.query())) {
            assertTrue(rows.next());
            return StoredRow.read(rows);
        }
    }

    @Test
    void aUsualRowIsPackedAndSaysTheSameCellByCell() throws SQLException {
        PackedRow packed = assertInstanceOf(PackedRow.class, row());
        assertEquals(cells(), packed.cells());
        assertEquals(Cell.whole(7), packed.cells().cells().get(0));
        assertEquals(text("observed"), packed.cells().cells().get(8));
        assertEquals(Cell.blob(new byte[] {'{', '}'}), packed.cells().cells().get(11));
    }

    /** The row as it is read when it is not packed. */
    private EventRow cells() throws SQLException {
        execute("UPDATE event SET sitting = '1'");
        EventRow other = assertInstanceOf(EventRow.class, row());
        assertEquals(text("1"), other.cells().get(4));
        execute("UPDATE event SET sitting = 1");
        return new EventRow(other.cells().stream().map(cell -> cell.equals(text("1")) ? Cell.whole(1) : cell).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = ':', quoteCharacter = '#', value = {"test_id: x'542D344B374D322D5158443952'", "sequence: 3.0",
            "sequence: '3'", "sequence: NULL", "instant: NULL", "sitting: 1e0", "elapsed: 5", "actor: x'514E'", "role: 1.5", "kind: NULL",
                    "kind: 'observed' || char(10)", "actor: char(10)",
            "kind: 'observed' || char(10) || '{'", "link: zeroblob(31)", "link: zeroblob(33)", "link: 'abcdefghijklmnopqrstuvwxyzabcdef'",
            "subtree: zeroblob(31)", "subtree: NULL", "canonical: '{}'", "canonical: NULL", "canonical: zeroblob(1048577)",
            "actor: hex(zeroblob(2049))"})
    void anUnusualCellIsReadAsItIsStored(String column, String value) throws SQLException {
        execute("UPDATE event SET " + column + " = " + value);
        EventRow row = assertInstanceOf(EventRow.class, row());
        int place = StoredRow.COLUMNS.indexOf(column);
        try (Statement statement = connection.createStatement();
                ResultSet stored = statement.executeQuery("SELECT typeof(" + column + "), octet_length(" + column + ") FROM event")) {
            assertEquals(stored.getString(1), row.cells().get(place).type());
            long longest = place == StoredRow.COLUMNS.size() - 1 ? 1L << 20 : Cell.SHORT;
            assertEquals(Math.min(stored.getLong(2), longest + 1), row.cells().get(place).bytes().length);
        }
    }

    /** Packed, these would read like a usual row. */
    @Test
    void bytesThatMoveFromOneColumnToTheNextAreNotTakenForUsual() throws SQLException {
        execute("UPDATE event SET link = zeroblob(31), subtree = x'0A' || zeroblob(32)");
        EventRow moved = assertInstanceOf(EventRow.class, row());
        assertEquals(31, moved.cells().get(9).bytes().length);
        execute("UPDATE event SET link = zeroblob(32), subtree = zeroblob(32), actor = 'QN' || char(10) || 'technician', role = ''");
        EventRow longer = assertInstanceOf(EventRow.class, row());
        assertEquals(text("QN\ntechnician"), longer.cells().get(6));
    }
}
