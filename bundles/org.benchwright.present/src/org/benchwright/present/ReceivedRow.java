package org.benchwright.present;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.receipt.Standing;

/**
 * A unit that came in.
 *
 * @param receipt  what its receipt is called, such as {@code R-17}
 * @param unit     serial number or tag
 * @param plate    what the type plate told, in words
 * @param family   its family, may be empty
 * @param order    the order, may be empty
 * @param owner    whose it is, may be empty
 * @param notes    complaint, damage and what is to be preserved, a sentence each
 * @param received when it came in
 * @param by       who received it
 * @param standing where it stands
 * @param state    where it stands, in words
 * @param test     its last test since, if there is one
 * @param since    since when it stands there
 */
public record ReceivedRow(String receipt, String unit, String plate, String family, String order, String owner, List<String> notes,
        Instant received, String by, Standing standing, String state, Optional<String> test, Instant since) {
    public ReceivedRow {
        notes = List.copyOf(notes);
    }
}
