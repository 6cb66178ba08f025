package org.benchwright.ledger.internal.verify;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;

/** One row of the table of events as it was found, {@link #COLUMNS} in order. */
public record EventRow(List<Cell> cells) {

    /** The columns; those from {@code test_id} to {@code kind} must say what the canonical bytes say. */
    public static final List<String> COLUMNS = List.of("position", "test_id", "sequence", "instant", "sitting", "elapsed", "actor", "role", "kind",
            "link", "subtree", "canonical");

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
                .mapToObj(i -> "typeof(" + COLUMNS.get(i) + ") = '" + TYPES.get(i) + "'"
                        + (TYPES.get(i).equals("integer") ? "" : " AND octet_length(" + COLUMNS.get(i) + ") <= " + longest(i)))
                .collect(Collectors.joining(" AND "));
        return "SELECT " + usual + ", rowid, " + String.join(", ", COLUMNS) + " FROM event ORDER BY position";
    }

    /** The current row of {@link #query}. */
    public static EventRow read(ResultSet rows) throws SQLException {
        if (!rows.getBoolean(1)) {
            return unusual(rows.getStatement().getConnection(), rows.getLong(2));
        }
        List<Cell> cells = new ArrayList<>(COLUMNS.size());
        for (int i = 0; i < COLUMNS.size(); i++) {
            byte[] bytes = rows.getBytes(i + 3);
            cells.add(new Cell(TYPES.get(i), bytes == null ? new byte[0] : bytes));
        }
        return new EventRow(cells);
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

    /** The cell of a column. */
    public Cell cell(String column) {
        return cells.get(COLUMNS.indexOf(column));
    }

    /** The columns, from {@code test_id} to {@code kind}, that say something else than {@code event}. */
    List<String> differing(Event event) {
        List<String> differing = new ArrayList<>();
        compare("test_id", cell("test_id").isText(event.test().value()), differing);
        compare("sequence", cell("sequence").isWhole(event.sequence()), differing);
        compare("instant", cell("instant").instant().equals(Optional.of(event.instant())), differing);
        compare("sitting", cell("sitting").isWhole(event.sitting()), differing);
        compare("elapsed", cell("elapsed").isText(event.offset().toString()), differing);
        compare("actor", cell("actor").isText(event.actor().id()), differing);
        compare("role", cell("role").isText(event.actor().role().word()), differing);
        compare("kind", cell("kind").isText(event.kind()), differing);
        return differing;
    }

    private static void compare(String column, boolean same, List<String> differing) {
        if (!same) {
            differing.add(column);
        }
    }
}
