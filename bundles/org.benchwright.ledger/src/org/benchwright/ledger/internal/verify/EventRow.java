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

/** One row of the table of events, cell by cell. */
public record EventRow(List<Cell> cells) implements StoredRow {

    private static final int LINK = COLUMNS.indexOf("link");

    /** As many cells as there are columns. */
    public EventRow {
        cells = List.copyOf(cells);
        if (cells.size() != COLUMNS.size()) {
            throw new IllegalArgumentException("an event row has " + COLUMNS.size() + " cells");
        }
    }

    /** The row of that number, type by type and no longer than need be. */
    static EventRow read(Connection connection, long rowid) throws SQLException {
        String columns = IntStream.range(0, COLUMNS.size()).mapToObj(i -> Cell.columns(COLUMNS.get(i), StoredRow.longest(i)))
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

    @Override
    public int length() {
        return canonical().bytes().length;
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
