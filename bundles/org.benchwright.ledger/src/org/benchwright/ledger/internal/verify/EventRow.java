package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchwright.ledger.internal.EventCodec;

/** One row of the table of events as it was found, {@link #COLUMNS} in order. */
public record EventRow(List<Cell> cells) {

    /** The columns; those from {@code test_id} to {@code kind} must say what the canonical bytes say. */
    public static final List<String> COLUMNS = List.of("position", "test_id", "sequence", "instant", "sitting", "elapsed", "actor", "role", "kind",
            "link", "subtree", "canonical");

    private static final int LINK = 9;

    /** As many cells as there are columns. */
    public EventRow {
        cells = List.copyOf(cells);
        if (cells.size() != COLUMNS.size()) {
            throw new IllegalArgumentException("an event row has " + COLUMNS.size() + " cells");
        }
    }

    /** The storage class that each column has when nobody tampered with it. */
    private static final List<String> TYPES = List.of("integer", "text", "integer", "text", "integer", "text", "text", "text", "text", "blob",
            "blob", "blob");

    /**
     * All rows in ledger order: whether all cells of a row have their usual type and length, the row's number, and the cells. What is
     * usual is read as it stands; only a row that is not is asked for again, type by type and no longer than need be.
     */
    public static String query() {
        String usual = IntStream.range(0, COLUMNS.size())
                .mapToObj(i -> usual(COLUMNS.get(i), TYPES.get(i), longest(i)))
                .collect(Collectors.joining(" AND "));
        return "SELECT " + usual + ", rowid, " + String.join(", ", COLUMNS) + " FROM event ORDER BY position";
    }

    /** The length is asked first, or a long cell would be read to be compared. Of the storage classes, texts are less than blobs and no less than ''. */
    private static String usual(String column, String type, long longest) {
        return switch (type) {
            case "integer" -> "typeof(" + column + ") = 'integer'";
            case "text" -> "octet_length(" + column + ") <= " + longest + " AND " + column + " >= '' AND " + column + " < x''";
            default -> "octet_length(" + column + ") <= " + longest + " AND " + column + " >= x''";
        };
    }

    /** The current row of {@link #query}. */
    public static EventRow read(ResultSet rows) throws SQLException {
        if (!rows.getBoolean(1)) {
            return unusual(rows.getStatement().getConnection(), rows.getLong(2));
        }
        Cell[] cells = new Cell[COLUMNS.size()];
        for (int i = 0; i < cells.length; i++) {
            byte[] bytes = rows.getBytes(i + 3);
            cells[i] = new Cell(TYPES.get(i), bytes == null ? new byte[0] : bytes);
        }
        return new EventRow(List.of(cells));
    }

    private static EventRow unusual(Connection connection, long rowid) throws SQLException {
        String columns = IntStream.range(0, COLUMNS.size()).mapToObj(i -> Cell.columns(COLUMNS.get(i), longest(i)))
                .collect(Collectors.joining(", "));
        try (PreparedStatement statement = connection.prepareStatement("SELECT " + columns + " FROM event WHERE rowid = ?")) {
            statement.setLong(1, rowid);
            try (ResultSet row = statement.executeQuery()) {
                // A row that a scan meets and a search does not is in a damaged tree: nothing is known of it.
                return new EventRow(row.next() ? Cell.read(row, COLUMNS.size())
                        : Collections.nCopies(COLUMNS.size(), Cell.NOTHING));
            }
        }
    }

    private static long longest(int column) {
        return COLUMNS.get(column).equals("canonical") ? EventCodec.LONGEST : Cell.SHORT;
    }

    Cell position() {
        return cells.get(0);
    }

    Cell test() {
        return cells.get(1);
    }

    Cell link() {
        return cells.get(LINK);
    }

    Cell subtree() {
        return cells.get(LINK + 1);
    }

    Cell canonical() {
        return cells.get(LINK + 2);
    }

    /** The columns, from {@code test_id} to {@code kind}, that say something else than the bytes. Each has one way only to be written. */
    List<String> differing(EventCodec.Said said) {
        List<String> differing = new ArrayList<>();
        compare(1, cells.get(1).isText(said.texts().get("test")), differing);
        compare(2, cells.get(2).isWhole(said.texts().get("sequence")), differing);
        compare(3, cells.get(3).isText(said.texts().get("instant")), differing);
        compare(4, cells.get(4).isWhole(said.texts().get("sitting")), differing);
        compare(5, cells.get(5).isText(said.texts().get("offset")), differing);
        compare(6, cells.get(6).isText(said.texts().get("actor")), differing);
        compare(7, cells.get(7).isText(said.texts().get("role")), differing);
        compare(8, cells.get(8).isText(said.texts().get("kind")), differing);
        return differing;
    }

    private static void compare(int column, boolean same, List<String> differing) {
        if (!same) {
            differing.add(COLUMNS.get(column));
        }
    }
}
