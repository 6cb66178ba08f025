package org.benchwright.ledger.internal.verify;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;

/**
 * The rows of the table of events in their order, some at a time. What each says by itself is worked out by other threads while the next are
 * read; few are under way at any time, so that memory doesn't grow with the ledger.
 */
final class RowStream {

    private static final int ROWS = 128;
    /** A row can be a megabyte long. */
    private static final long BYTES = 1 << 20;
    private static final int UNDER_WAY = 8;

    private final ResultSet rows;
    private final Deque<ForkJoinTask<List<DecodedRow>>> underWay = new ArrayDeque<>();
    private boolean ended;

    /** All rows of {@code rows}, a result of {@link EventRow#query}. */
    RowStream(ResultSet rows) {
        this.rows = rows;
    }

    /** The next rows; empty after the last. */
    Optional<List<DecodedRow>> next() throws SQLException {
        while (!ended && underWay.size() < UNDER_WAY) {
            List<EventRow> read = read();
            if (!read.isEmpty()) {
                underWay.add(ForkJoinPool.commonPool().submit(() -> read.stream().map(DecodedRow::of).toList()));
            }
        }
        return underWay.isEmpty() ? Optional.empty() : Optional.of(underWay.remove().join());
    }

    private List<EventRow> read() throws SQLException {
        List<EventRow> read = new ArrayList<>(ROWS);
        long bytes = 0;
        while (read.size() < ROWS && bytes < BYTES) {
            if (!rows.next()) {
                ended = true;
                break;
            }
            EventRow row = EventRow.read(rows);
            bytes += row.cell("canonical").bytes().length;
            read.add(row);
        }
        return read;
    }
}
