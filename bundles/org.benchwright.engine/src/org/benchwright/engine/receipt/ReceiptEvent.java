package org.benchwright.engine.receipt;

import java.time.Instant;
import org.benchwright.core.Actor;

/**
 * A fact about a unit in the house, with who told it.
 *
 * @param number  its number among all of them, from 1
 * @param instant when
 * @param by      who told it
 * @param fact    what
 */
public record ReceiptEvent(long number, Instant instant, Actor by, ReceiptFact fact) {
}
