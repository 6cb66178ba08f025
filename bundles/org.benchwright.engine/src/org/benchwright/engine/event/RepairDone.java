package org.benchwright.engine.event;

import java.time.Instant;
import java.util.List;

import org.benchwright.engine.receipt.ReplacedPart;

/**
 * A repair, as the book of receipts tells it.
 *
 * @param event   its number there
 * @param instant when
 * @param by      by whom
 * @param what    what was done, may be empty
 * @param parts   what was replaced
 */
public record RepairDone(long event, Instant instant, String by, String what, List<ReplacedPart> parts) {
    public RepairDone {
        parts = List.copyOf(parts);
    }
}
