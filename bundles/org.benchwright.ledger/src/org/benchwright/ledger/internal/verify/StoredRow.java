package org.benchwright.ledger.internal.verify;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchwright.core.Digest;
import org.benchwright.ledger.internal.EventCodec;

/** One row of the table of events as it was found. */
public sealed interface StoredRow permits EventRow, PackedRow {

    /** The columns in order; those from {@code test_id} to {@code kind} must say what the canonical bytes say. */
    List<String> COLUMNS = List.of("position", "test_id", "sequence", "instant", "sitting", "elapsed", "actor", "role", "kind", "link", "subtree",
            "canonical");

    /** The storage class that each column has when nobody tampered with it. */
    List<String> TYPES = List.of("integer", "text", "integer", "text", "integer", "text", "text", "text", "text", "blob", "blob", "blob");

    /**
     * All rows in ledger order: packed where all cells have their usual type and length, the canonical bytes, and the row's number. Only a row that
     * is not usual is asked for again, type by type and no longer than need be.
     */
    static String query() {
        String usual = IntStream.range(0, COLUMNS.size()).mapToObj(StoredRow::usual).collect(Collectors.joining(" AND "));
        return "SELECT CASE WHEN " + usual + " THEN " + PackedRow.packing() + " END, canonical, rowid FROM event ORDER BY position";
    }

    /** The length is asked first, or a long cell would be read to be compared. Of the storage classes, texts are less than blobs and no less than ''. */
    private static String usual(int place) {
        String column = COLUMNS.get(place);
        return switch (TYPES.get(place)) {
            case "integer" -> "typeof(" + column + ") = 'integer'";
            case "text" -> "octet_length(" + column + ") <= " + longest(place) + " AND " + column + " >= '' AND " + column + " < x''";
            default -> "octet_length(" + column + ") " + (column.equals("canonical") ? "<= " + longest(place) : "= " + Digest.LENGTH) + " AND "
                    + column + " >= x''";
        };
    }

    /** The current row of {@link #query}. */
    static StoredRow read(ResultSet rows) throws SQLException {
        byte[] packed = rows.getBytes(1);
        if (packed != null) {
            byte[] canonical = rows.getBytes(2);
            Optional<PackedRow> row = PackedRow.of(packed, canonical == null ? new byte[0] : canonical);
            if (row.isPresent()) {
                return row.get();
            }
        }
        return EventRow.read(rows.getStatement().getConnection(), rows.getLong(3));
    }

    /** Most bytes that are read of a column. */
    static long longest(int column) {
        return COLUMNS.get(column).equals("canonical") ? EventCodec.LONGEST : Cell.SHORT;
    }

    /** How many bytes its event has. */
    int length();
}
