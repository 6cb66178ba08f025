package org.benchwright.ledger.internal.verify;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;

/** Reads instants strictly. */
final class Instants {

    private Instants() {
    }

    /** The instant in {@code cell}, when it is written exactly as the ledger writes it. */
    static Optional<Instant> exact(Cell cell) {
        try {
            return cell.text().map(Instant::parse).filter(instant -> cell.isText(instant.toString()));
        } catch (DateTimeException malformed) {
            return Optional.empty();
        }
    }
}
