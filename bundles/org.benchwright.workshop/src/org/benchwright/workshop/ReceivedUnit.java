package org.benchwright.workshop;

import java.time.Instant;
import java.util.Optional;

import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.Standing;

/**
 * A unit that came in, and where it stands.
 *
 * @param receipt  how it came in
 * @param standing where it stands
 * @param test     its last test since, if there is one
 * @param since    since when it stands there
 */
public record ReceivedUnit(Receipt receipt, Standing standing, Optional<String> test, Instant since) {
}
