package org.benchwright.ledger;

import java.time.Instant;
import java.util.Optional;

/**
 * Which tests to count.
 *
 * @param family only of this family
 * @param serial only of this unit
 * @param from   opened at this instant or later
 * @param until  opened before this instant
 */
public record ProjectionFilter(Optional<String> family, Optional<String> serial, Optional<Instant> from, Optional<Instant> until) {

    /** Every test. */
    public static final ProjectionFilter ALL = new ProjectionFilter(Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty());
}
