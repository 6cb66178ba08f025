package org.benchwright.engine.receipt;

import java.time.Instant;
import org.benchwright.core.Actor;

/**
 * A repair that was written down.
 *
 * @param number  number of its event
 * @param instant when
 * @param by      by whom
 * @param said    what
 */
public record Repair(long number, Instant instant, Actor by, ReceiptFact.Repaired said) {
}
