package org.benchwright.workshop;

import java.time.Instant;
import java.util.Optional;

/**
 * Which tests figures count.
 *
 * @param family only of this family, by its name
 * @param serial only of this unit
 * @param from   opened at this instant or later
 * @param until  opened before this instant
 */
public record FleetFilter(Optional<String> family, Optional<String> serial, Optional<Instant> from, Optional<Instant> until) {
}
