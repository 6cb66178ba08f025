package org.benchwright.watch;

import java.util.concurrent.CompletionStage;

/**
 * Reads the points of one unit. Read-only by construction: there is no method to write with, and what implements it sends no request that
 * changes anything in a unit.
 */
public interface PointReader extends AutoCloseable {

    /**
     * Reads all points once. One read at a time.
     *
     * @return the values; or it completes with a {@link CannotSeeException} that says in plain words what is in the way
     */
    CompletionStage<PointValues> read();

    /** Ends the connection, if there is one. */
    @Override
    void close();
}
