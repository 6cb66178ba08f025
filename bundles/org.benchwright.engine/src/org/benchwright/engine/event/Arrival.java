package org.benchwright.engine.event;

import java.time.Instant;

import org.benchwright.engine.receipt.Plate;

/**
 * How a unit came in, as the book of receipts tells it when the test is opened.
 *
 * @param receipt   number of the receipt
 * @param statement number of the event in that book that says so
 * @param instant   when it came in
 * @param order     the order, may be empty
 * @param owner     whose it is, may be empty
 * @param plate     what its type plate told
 * @param complaint what its owner says, may be empty
 * @param damage    what was seen from outside, may be empty
 * @param preserve  what must not be lost, may be empty
 */
public record Arrival(long receipt, long statement, Instant instant, String order, String owner, Plate plate, String complaint, String damage,
        String preserve) {
}
