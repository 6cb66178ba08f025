package org.benchwright.ledger.internal.verify;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ForkJoinPool;

/**
 * The rows of the table of events in their order, some at a time. A thread of its own reads them, and what each says by itself is worked out by
 * others, while those before are looked at; few are under way at any time, so that memory doesn't grow with the ledger.
 */
final class RowStream implements AutoCloseable {

    private static final int ROWS = 128;
    /** A row can be a megabyte long. */
    private static final long BYTES = 1 << 20;
    private static final int UNDER_WAY = 8;

    private final ResultSet rows;
    private final BlockingQueue<CompletableFuture<List<DecodedRow>>> underWay = new ArrayBlockingQueue<>(UNDER_WAY);
    private final Thread reader = new Thread(this::readAll, "rows of a ledger");
    private boolean ended;

    /** All rows of {@code rows}, a result of {@link StoredRow#query}, which is read by nobody else until this is closed. */
    RowStream(ResultSet rows) {
        this.rows = rows;
        reader.setDaemon(true);
        reader.start();
    }

    /** The next rows; empty after the last. */
    Optional<List<DecodedRow>> next() throws SQLException {
        if (ended) {
            return Optional.empty();
        }
        try {
            List<DecodedRow> found = underWay.take().join();
            ended = found.isEmpty();
            return ended ? Optional.empty() : Optional.of(found);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new SQLException("interrupted", interrupted);
        } catch (CompletionException failure) {
            ended = true;
            if (failure.getCause() instanceof SQLException unreadable) {
                throw unreadable;
            }
            throw failure;
        }
    }

    private void readAll() {
        try {
            List<StoredRow> read = read();
            while (!read.isEmpty()) {
                List<StoredRow> some = read;
                underWay.put(CompletableFuture.supplyAsync(() -> DecodedRow.all(some), ForkJoinPool.commonPool()));
                read = read();
            }
            underWay.put(CompletableFuture.completedFuture(List.of()));
        } catch (InterruptedException closed) {
            Thread.currentThread().interrupt();
        } catch (SQLException | RuntimeException | OutOfMemoryError failure) {
            tell(failure);
        }
    }

    private void tell(Throwable failure) {
        try {
            underWay.put(CompletableFuture.failedFuture(failure));
        } catch (InterruptedException closed) {
            Thread.currentThread().interrupt();
        }
    }

    private List<StoredRow> read() throws SQLException, InterruptedException {
        List<StoredRow> read = new ArrayList<>(ROWS);
        long bytes = 0;
        while (read.size() < ROWS && bytes < BYTES && rows.next()) {
            StoredRow row = StoredRow.read(rows);
            bytes += row.length();
            read.add(row);
        }
        if (Thread.interrupted()) {
            throw new InterruptedException();
        }
        return read;
    }

    /** Ends the reading; nobody reads when this returns. */
    @Override
    public void close() {
        reader.interrupt();
        Waiting.uninterrupted(reader);
    }
}
